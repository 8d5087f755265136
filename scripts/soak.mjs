/**
 * Random drawings against the second implementation and brute force for as long as there is time:
 * `npm run soak -- --minutes 10 --seed 1`. Never part of the tests; ends with 1 where anything differs.
 */
import { parseArgs } from "node:util";
import { createServer } from "vite";

const { values } = parseArgs({
  options: { minutes: { type: "string", default: "10" }, seed: { type: "string", default: "1" } },
});
const [minutes, seed] = [Number(values.minutes), Number(values.seed)];
if (!(minutes > 0) || !Number.isInteger(seed)) {
  console.error("soak: --minutes is a number above 0, --seed a whole number");
  process.exit(2);
}
const server = await createServer({
  configFile: false,
  appType: "custom",
  server: { middlewareMode: true, hmr: false, watch: null },
  optimizeDeps: { noDiscovery: true },
  logLevel: "error",
});
const { soak } = await server.ssrLoadModule("/tests/soak/soak.ts");
const end = Date.now() + minutes * 60_000;
let toldOf = 0;
const told = ({ systems, skipped, threats, differences }, at) => {
  if (Date.now() - toldOf < 60_000) return;
  toldOf = Date.now();
  console.log(
    `seed ${at}: ${systems} systems, ${threats} threats, ${skipped} left out, ${differences.length} differences`,
  );
};
const soaked = soak(seed, () => Date.now() > end, told);
await server.close();
const verdicts = Object.entries(soaked.verdicts).map(([verdict, count]) => `${count} ${verdict}`);
console.log(
  `${soaked.systems} systems from seed ${seed} on (${soaked.skipped} left out as too large), ${soaked.threats} threats, ` +
    `work points ${verdicts.join(", ")}: ${soaked.differences.length} differences`,
);
process.exitCode = soaked.differences.length === 0 ? 0 : 1;
