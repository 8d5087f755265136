import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { spell } from "../../../../tests/support/words";
import { ruleName, RULES } from ".";

/** Ids of a table of rules: the first column of its rows. */
const idsIn = (markdown: string): string[] =>
  [...markdown.matchAll(/^\| `([a-z-]+)`\s*\|/gm)].map((it) => it[1]!);

test("each rule is told once", () => {
  const ids = RULES.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
});

test("docs/rehearsal.md has each rule with its severity and citation", () => {
  const page = readFileSync("docs/rehearsal.md", "utf8");
  const table = page.slice(page.indexOf("## Rules"));
  expect(idsIn(table)).toEqual(RULES.map(({ id }) => id));
  const rows = table.split("\n");
  for (const { id, severity, citation } of RULES) {
    const row = rows.find((it) => it.startsWith(`| \`${id}\``))!;
    expect(row.split("|").map((it) => it.trim())).toEqual(expect.arrayContaining([severity, citation]));
  }
});

test("each rule says what it looks at: a step, or the end", () => {
  for (const { check, atEnd } of RULES) expect(check ?? atEnd).toBeDefined();
});

test("each rule has a sentence of its own, and a rule of a newer file is told as unknown", () => {
  const sentences = RULES.map(({ id }) => spell(ruleName(id)));
  expect(new Set(sentences).size).toBe(RULES.length);
  expect(ruleName("later-rule").key).toBe("company.unknownRule");
});
