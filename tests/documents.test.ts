import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import packageJson from "../package.json";
import { COMMANDS } from "../src/cli/run";
import { DEVICES, STEP_VERBS } from "../src/core";
import { files, line } from "./cli/line";

/** What the documents for people show and name is what there is. */

const README = readFileSync("README.md", "utf8");
const DEVELOPERS = readFileSync("DEVELOPERS.md", "utf8");

const blocksOf = (text: string): string[] =>
  [...text.matchAll(/^```\w*\n([\s\S]*?)^```/gm)].map(([, block]) => block!);

/** The drawing that the README speaks of, with its sideline cutout open. */
const opened = JSON.parse(readFileSync("shared/demos/sideline-three-transformers.stillhot.json", "utf8")) as {
  system: { elements: Record<string, { phases: string; open?: string }> };
};
opened.system.elements["c1"]!.open = opened.system.elements["c1"]!.phases;
const at = files({ "opened.stillhot.json": opened });

/** Lines that the README shows as typed, each with what it shows of the answer: runs of lines, with others between. */
const shown = blocksOf(README)
  .map((it) => /^\$ npx \. (.*)\n([\s\S]+)$/.exec(it))
  .filter((it) => it !== null)
  .map(([, typed, answer]) => [typed!, answer!] as const);

test.each(shown)("README: npx . %s", async (typed, answer) => {
  let out = "";
  for (const words of typed.split(" | npx . ")) {
    const said = words.split(" ").map((it) => (existsSync(at(it)) && /json$/.test(it) ? at(it) : it));
    ({ out } = await line(said, { stdin: [out] }));
  }
  let rest = out.replace(at(""), "");
  for (const run of answer.split(/^ *…\n/m)) {
    expect(rest).toContain(run);
    rest = rest.slice(rest.indexOf(run) + run.length);
  }
});

test("README shows what is typed and answered, and names every command", () => {
  expect(shown.length).toBeGreaterThan(1);
  const named = [...README.matchAll(/^\| `([a-z]+)/gm)].map(([, name]) => name);
  expect(named).toEqual(COMMANDS.map(({ name }) => name));
});

test.each([
  ["README.md", README],
  ["DEVELOPERS.md", DEVELOPERS],
])("%s names files that are there, and scripts that can be run", (_, text) => {
  const paths = [
    ...text.matchAll(
      /`((?:src|tests|docs|shared|scripts|static|bin)\/[\w./-]+)`|\]\(([\w./-]+)(?:#[\w-]+)?\)/g,
    ),
  ].map(([, quoted, linked]) => quoted ?? linked!);
  const ofOnesOwn = /\/(KIND|VERB|NAME)\./;
  expect(paths.length).toBeGreaterThan(5);
  expect(paths.filter((it) => !ofOnesOwn.test(it) && !existsSync(it))).toEqual([]);
  const scripts = [...text.matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name!);
  expect(scripts.filter((it) => !Object.hasOwn(packageJson.scripts, it))).toEqual([]);
});

/** What the first or the last column of a table names, under its head. */
function named(head: string, column: number): string[] {
  const format = readFileSync("docs/format.md", "utf8");
  const [table] = format.slice(format.indexOf(head)).split("\n\n");
  return table!
    .split("\n")
    .slice(2)
    .flatMap((row) =>
      [
        ...row
          .split(" | ")
          .at(column)!
          .matchAll(/`([\w-]+)`/g),
      ].map(([, name]) => name!),
    );
}

test("docs/format.md has each kind with its keys, and each verb with what it needs", () => {
  expect(Object.keys(DEVICES).filter((it) => !named("| kind | keys of its own", 0).includes(it))).toEqual([]);
  expect(named("| needs | verbs |", -1).sort()).toEqual([...STEP_VERBS].sort());
});

test("the rule that DEVELOPERS.md shows is tested as it is shown", () => {
  const [example] = blocksOf(DEVELOPERS).filter((it) => it.startsWith("checkRule("));
  const tested = readFileSync("src/core/procedure/rules/groundOrder.test.ts", "utf8");
  for (const row of example!.trimEnd().split("\n")) expect(tested).toContain(row);
});

test("the package carries the program, the format and all that its README leads to", () => {
  const packed = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    encoding: "utf8",
  });
  const [{ files: carried }] = JSON.parse(packed) as [{ files: readonly { path: string }[] }];
  const paths = carried.map(({ path }) => path);
  const linked = [...README.matchAll(/\]\(([\w./-]+)(?:#[\w-]+)?\)/g)].map(([, path]) => path!);
  expect(paths).toEqual(expect.arrayContaining(["bin/stillhot.mjs", "docs/format.md", ...linked]));
});
