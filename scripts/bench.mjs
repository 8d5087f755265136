/** `npm run bench [NAMEPART]`: runs tests/bench/*.bench.ts one after another and lets them print their figures. */
import { checkNode, install, say, tool } from "./lib/project.mjs";

checkNode();
install();
say("benchmarks");
const code = tool("vitest/vitest.mjs", [
  "run",
  "--project=bench",
  "--no-file-parallelism",
  "--disable-console-intercept",
  "--passWithNoTests",
  ...process.argv.slice(2),
]);
process.exit(code);
