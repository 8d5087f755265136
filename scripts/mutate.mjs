/**
 * Would the laws beside a folder notice a mistake in it? `npm run mutate -- hazard [--count 400] [--seed 1]`.
 *
 * Makes small changes to the code of src/core/FOLDER, one at a time, and runs the tests beside it on each. The mutants are
 * those of a random sample, named by its seed: declarations of the folder in a random order, until they hold at least
 * `count`. Survivors are listed; one that changes nothing anybody can see is named with its reason in
 * tests/mutation/equivalent.json and does not count. Never part of the tests.
 */
import { createHash } from "node:crypto";
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join, relative } from "node:path";
import { parseArgs } from "node:util";
import { Stryker } from "@stryker-mutator/core";
import { Instrumenter } from "@stryker-mutator/instrumenter";
import ts from "typescript";
import { at, makeResults, root } from "./lib/project.mjs";

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { count: { type: "string", default: "400" }, seed: { type: "string", default: "1" } },
});
const [count, seed] = [Number(values.count), Number(values.seed)];
const [folder] = positionals;
if (!folder || !(count > 0) || !Number.isInteger(seed)) {
  console.error("mutate: name a folder of src/core; --count is a number above 0, --seed a whole number");
  process.exit(2);
}

const place = `src/core/${folder}`;
process.env.MUTATED_FOLDER = place;

/** Where each declaration of a file stands: its first and last line, from 1. */
function declarationsOf(file) {
  const source = ts.createSourceFile(file, readFileSync(at(file), "utf8"), ts.ScriptTarget.Latest, true);
  const lineAt = (position) => source.getLineAndCharacterOfPosition(position).line + 1;
  return source.statements
    .filter(
      (it) => !ts.isImportDeclaration(it) && !ts.isInterfaceDeclaration(it) && !ts.isTypeAliasDeclaration(it),
    )
    .map((it) => ({ file, from: lineAt(it.getStart()), to: lineAt(it.end) }));
}

/** Its place in the random order that the seed names: the same on every machine. */
const drawn = ({ file, from }) => createHash("sha256").update(`${seed} ${file} ${from}`).digest("hex");

const files = readdirSync(at(place), { recursive: true })
  .filter((it) => it.endsWith(".ts") && !it.endsWith(".test.ts"))
  .map((it) => join(place, it));
const declarations = files.flatMap(declarationsOf).sort((a, b) => (drawn(a) < drawn(b) ? -1 : 1));

const settings = {
  testRunner: "vitest",
  // Which tests are a mutant's is known from what they ran through: what a file imports says nothing more.
  vitest: { configFile: "tests/mutation/vitest.config.ts", related: false },
  plugins: ["@stryker-mutator/vitest-runner"],
  ignorePatterns: ["/dist", "/dist-cli", "/tests/e2e", "/tests/bench", "/static"],
  tempDirName: ".test-results/mutation",
  reporters: ["progress"],
  coverageAnalysis: "perTest",
  // What is worked out once when a file is loaded would have all of it loaded anew for each mutant.
  ignoreStatic: true,
  concurrency: 1,
  dryRunTimeoutMinutes: 60,
  // A mutant is killed by a law, not by a busy machine: only one that never ends runs out of so much time.
  timeoutMS: 600_000,
};

/** The line on which a mutant begins, as it is written. */
const lineOf = ({ fileName, location: { start } }) =>
  readFileSync(fileName, "utf8").split("\n")[start.line - 1].trim();

/** The code that a mutant replaces, on one line. Lines and columns of a result count from 1. */
function originalOf({ fileName, location: { start, end } }) {
  const lines = readFileSync(fileName, "utf8")
    .split("\n")
    .slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.join("\n").replace(/\s+/g, " ");
}

/** All mutants that the folder's code has, each with the declaration that it is in. */
async function mutantsOf(them) {
  const log = { debug() {}, info() {}, isDebugEnabled: () => false };
  const contents = [...new Set(them.map((it) => it.file))].map((name) => ({
    name,
    content: readFileSync(at(name), "utf8"),
    mutate: true,
  }));
  const options = { plugins: null, excludedMutations: [], ignorers: [] };
  const { mutants } = await new Instrumenter(log).instrument(contents, options);
  return mutants;
}

/** Declarations in their random order until they hold `count` mutants. */
async function sample() {
  const mutants = await mutantsOf(declarations);
  const heldBy = (it) =>
    mutants.filter(
      ({ fileName, location }) =>
        fileName === it.file && location.start.line + 1 >= it.from && location.end.line + 1 <= it.to,
    ).length;
  const chosen = [];
  let held = 0;
  for (const it of declarations) {
    if (held >= count) break;
    const more = heldBy(it);
    if (more > 0) chosen.push(it);
    held += more;
  }
  console.log(
    `${place}: ${held} of ${mutants.length} mutants, in ${chosen.length} declarations (seed ${seed})`,
  );
  return chosen.map(({ file, from, to }) => `${file}:${from}-${to}`);
}

/**
 * A mutant by what it changes on which line, as that is written: the same text elsewhere in the file is another.
 * @typedef {{ file: string, line: string, original: string, replacement: string, why: string }} Equivalent
 */
/** @type {Equivalent[]} */
const equivalents = JSON.parse(readFileSync(at("tests/mutation/equivalent.json"), "utf8"));
const isEquivalent = (it) =>
  equivalents.some(
    ({ file, line, original, replacement }) =>
      file === it.fileName && line === it.line && original === it.original && replacement === it.replacement,
  );

const isKilled = (it) => it.status === "Killed" || it.status === "Timeout";

/** What became of the mutants in `places`, where the laws are asked of all their random drawings or of a few. */
async function mutantsIn(places, { few }) {
  if (few) process.env.FEWER_DRAWS = "yes";
  else delete process.env.FEWER_DRAWS;
  return (await new Stryker({ ...settings, mutate: places }).runMutationTest())
    .filter((it) => it.status !== "Ignored")
    .map((it) => ({
      ...it,
      original: originalOf(it),
      line: lineOf(it),
      fileName: relative(root, it.fileName),
    }));
}

/** A mutant by what it changes where, which is the same in each run. */
const keyOf = ({ fileName, location: { start, end }, replacement }) =>
  [fileName, start.line, start.column, end.line, end.column, replacement].join(" ");
const placeOf = ({ fileName, location: { start, end } }) =>
  `${fileName}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;

/** Most mutants fall to a few drawings; only those that live are held against all. */
async function outcomesOf(places) {
  const first = await mutantsIn(places, { few: true });
  const living = first.filter((it) => !isKilled(it) && !isEquivalent(it));
  if (living.length === 0) return first;
  list(living, "live through a few drawings");
  const again = await mutantsIn([...new Set(living.map(placeOf))], { few: false });
  const later = new Map(again.map((it) => [keyOf(it), it]));
  return first.map((it) => (isKilled(it) ? it : (later.get(keyOf(it)) ?? it)));
}

const byPlace = (a, b) =>
  a.fileName === b.fileName
    ? a.location.start.line - b.location.start.line
    : a.fileName < b.fileName
      ? -1
      : 1;
function list(mutants, what) {
  console.log(`${mutants.length} ${what}`);
  for (const { fileName, location, mutatorName, original, replacement, status } of mutants.sort(byPlace))
    console.log(
      `${fileName}:${location.start.line} ${status} (${mutatorName})\n    ${original}\n  → ${replacement}`,
    );
}

const from = performance.now();
const outcomes = await outcomesOf(await sample());
const alive = outcomes.filter((it) => !isKilled(it));
const looked = alive.filter((it) => !isEquivalent(it));
list(looked, "live");
const counted = outcomes.length - (alive.length - looked.length);
const killed = counted - looked.length;
writeFileSync(
  join(makeResults(), `mutants-${folder.replaceAll("/", "-")}.json`),
  JSON.stringify(looked, null, 2),
);
console.log(
  `${place}: ${killed} of ${counted} mutants killed (${((100 * killed) / counted).toFixed(1)} %), ` +
    `${alive.length - looked.length} equivalent, in ${Math.round((performance.now() - from) / 60_000)} min`,
);
