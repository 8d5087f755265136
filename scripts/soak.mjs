/**
 * Random drawings against the second implementation and brute force for as long as there is time:
 * `npm run soak -- --minutes 10 --seed 1`. Never part of the tests; ends with 1 where anything differs. With `--pictures`
 * it looks at what is written on drawings instead.
 */
import { parseArgs } from "node:util";
import { createServer } from "vite";

const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    seed: { type: "string", default: "1" },
    pictures: { type: "boolean", default: false },
  },
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
const end = Date.now() + minutes * 60_000;
const isOver = () => Date.now() > end;
let toldOf = 0;
const everyMinute = (told) => (result, at) => {
  if (Date.now() - toldOf < 60_000) return;
  toldOf = Date.now();
  console.log(`seed ${at}: ${told(result)}`);
};
const wrong = values.pictures ? await pictures() : await answers();
await server.close();
process.exitCode = wrong === 0 ? 0 : 1;

async function pictures() {
  const { soakPictures } = await server.ssrLoadModule("/tests/soak/pictures.ts");
  const told = ({ drawings, faults }) => `${drawings} drawings looked at, ${faults.length} faults`;
  const looked = soakPictures(seed, isOver, everyMinute(told));
  console.log(told(looked));
  return looked.faults.length;
}

async function answers() {
  const { soak } = await server.ssrLoadModule("/tests/soak/soak.ts");
  const told = ({ systems, skipped, threats, differences }) =>
    `${systems} systems, ${threats} threats, ${skipped} left out, ${differences.length} differences`;
  const soaked = soak(seed, isOver, everyMinute(told));
  const verdicts = Object.entries(soaked.verdicts).map(([verdict, count]) => `${count} ${verdict}`);
  console.log(
    `${soaked.systems} systems from seed ${seed} on (${soaked.skipped} left out as too large), ${soaked.threats} threats, ` +
      `work points ${verdicts.join(", ")}: ${soaked.differences.length} differences`,
  );
  return soaked.differences.length;
}
