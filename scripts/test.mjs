/**
 * `npm test`: everything that says whether work is ready, in one go. The last line is `N passed, N failed`, which
 * counts each test and each tool as one; the exit code is 1 when anything failed. With `--long` each story of the screen is
 * told in every form, and random drawings are tried from more seeds.
 */
import { readFileSync, rmSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { getChromium } from "./lib/chromium.mjs";
import { at, builderOf, checkNode, install, makeResults, run, runBeside, say, tool } from "./lib/project.mjs";

const { long } = parseArgs({ options: { long: { type: "boolean", default: false } } }).values;
// The unit tests read it there (tests/support/long.ts).
if (long) process.env.LONG = "1";
// Only a core that was built in this run is asked.
delete process.env.LINKED_CORE;
const started = Date.now();
let passed = 0;
let failed = 0;
const failures = [];

function count(name, good, bad) {
  passed += good;
  failed += bad;
  if (bad > 0) failures.push(`${name}: ${bad} failed`);
  say(`${name}: ${good} passed, ${bad} failed`);
}

/** Steps that are right or wrong as a whole, as many at a time as there are processors; what one says stays together. */
async function stepsTogether(steps) {
  const left = [...steps];
  const good = new Set();
  async function work() {
    for (let it = left.shift(); it !== undefined; it = left.shift()) {
      const { name, file, args } = it;
      const { code, text } = await runBeside(process.execPath, [at("node_modules", file), ...args]);
      if (code === 0) good.add(name);
      process.stdout.write(text);
      count(name, code === 0 ? 1 : 0, code === 0 ? 0 : 1);
    }
  }
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return good;
}

/** A step that leaves its counts in a file; ending badly without a failure in the file is one failure. */
function counted(name, file, execute, read) {
  say(name);
  rmSync(file, { force: true });
  const code = execute();
  let counts = { good: 0, bad: 0 };
  try {
    counts = read(JSON.parse(readFileSync(file, "utf8")));
  } catch {
    console.error(`${name} left no counts`);
  }
  if (counts.good + counts.bad === 0) counts.bad = 1;
  if (code !== 0 && counts.bad === 0) counts.bad = 1;
  count(name, counts.good, counts.bad);
  failures.push(...(counts.names ?? []));
}

/** Tests, and files that could not be loaded at all. */
function readVitest({ numPassedTests, numFailedTests, testResults }) {
  const unloaded = testResults.filter((it) => it.status === "failed" && it.assertionResults.length === 0);
  const failed = testResults.flatMap((it) => it.assertionResults).filter((it) => it.status === "failed");
  return {
    good: numPassedTests,
    bad: numFailedTests + unloaded.length,
    names: [...unloaded.map((it) => it.name), ...failed.map((it) => it.fullName)],
  };
}

checkNode();
install();
const out = makeResults();
const { missing } = await getChromium();
if (missing) say(missing);

const [appBuilder, appArgs] = builderOf("app");
const [cliBuilder, cliArgs] = builderOf("cli");
const good = await stepsTogether([
  { name: "lint of components", file: "eslint/bin/eslint.js", args: [".", "--max-warnings", "0"] },
  {
    name: "lint",
    file: "oxlint/bin/oxlint",
    args: ["--report-unused-disable-directives-severity", "error", "."],
  },
  { name: "lint that asks for types", file: "oxlint/bin/oxlint", args: ["--type-aware", "src"] },
  {
    name: "types of everything",
    file: "svelte-check/bin/svelte-check",
    args: ["--tsgo", "--tsconfig", "./tsconfig.json", "--fail-on-warnings", "--output", "human"],
  },
  { name: "build of the app", file: appBuilder, args: appArgs },
  { name: "types of the core", file: "@typescript/native/bin/tsc", args: ["-p", "tsconfig.core.json"] },
  { name: "format", file: "oxfmt/bin/oxfmt", args: ["--check", "."] },
  { name: "build of the command line", file: cliBuilder, args: cliArgs },
  {
    name: "build of the core for its tests",
    file: cliBuilder,
    args: ["build", "-c", "vite.core.config.ts", "--logLevel", "warn"],
  },
]);
// The unit tests read it in vite.config.ts; without it they load the sources one by one.
if (good.has("build of the core for its tests")) process.env.LINKED_CORE = "1";

const vitest = join(out, "vitest.json");
counted(
  "unit, property and published checks",
  vitest,
  () =>
    tool("vitest/vitest.mjs", [
      "run",
      "--project=unit*",
      "--reporter=dot",
      "--reporter=json",
      `--outputFile.json=${vitest}`,
    ]),
  readVitest,
);

const e2e = join(out, "e2e.json");
counted(
  "end to end",
  e2e,
  () =>
    good.has("build of the app")
      ? run(process.execPath, ["tests/e2e/run.mjs", ...(long ? ["--long"] : [])])
      : 1,
  ({ passed: good, failed: bad, tests }) => ({
    good,
    bad,
    names: tests.filter((it) => !it.ok).map((it) => it.name),
  }),
);

say(`${Math.round((Date.now() - started) / 1000)} s`);
for (const it of failures) say(it);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
