/**
 * `npm test`: everything that says whether work is ready, in one go. The last line is `N passed, N failed`, which
 * counts each test and each tool as one; the exit code is 1 when anything failed.
 */
import { readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { getChromium } from "./lib/chromium.mjs";
import { build, checkNode, install, makeResults, run, say, tool } from "./lib/project.mjs";

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

/** A step that is right or wrong as a whole. */
function step(name, ...codes) {
  say(name);
  const ok = codes.every((code) => code() === 0);
  count(name, ok ? 1 : 0, ok ? 0 : 1);
  return ok;
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

step("types of the core", () => tool("typescript/bin/tsc", ["-p", "tsconfig.core.json"]));
step("types of everything", () =>
  tool("svelte-check/bin/svelte-check", [
    "--tsconfig",
    "./tsconfig.json",
    "--fail-on-warnings",
    "--output",
    "human",
  ]),
);
step("lint", () => tool("eslint/bin/eslint.js", [".", "--max-warnings", "0"]));
step("format", () => tool("prettier/bin/prettier.cjs", ["--check", ".", "--log-level", "warn"]));

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

const built = step(
  "build",
  () => build("app"),
  () => build("cli"),
);
const e2e = join(out, "e2e.json");
counted(
  "end to end",
  e2e,
  () => (built ? run(process.execPath, ["tests/e2e/run.mjs"]) : 1),
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
