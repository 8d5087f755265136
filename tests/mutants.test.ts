import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Equivalent {
  readonly file: string;
  readonly line: string;
  readonly original: string;
  readonly replacement: string;
  readonly why: string;
}

const named = JSON.parse(readFileSync("tests/mutation/equivalent.json", "utf8")) as readonly Equivalent[];

/** The lines of a file as they are written, without the room before them. */
const linesOf = (file: string): readonly string[] =>
  readFileSync(file, "utf8")
    .split("\n")
    .map((it) => it.trim());

test("each mutant that is named as changing nothing stands on one line of its file, and says why", () => {
  const off = named.filter(({ file, line, original, why }) => {
    const [begins = ""] = original.split(/(?<=:) /);
    return linesOf(file).filter((it) => it === line).length !== 1 || !line.includes(begins) || why === "";
  });
  expect(off).toEqual([]);
});

test("no mutant is named twice", () => {
  const keys = named.map(({ file, line, original, replacement }) =>
    JSON.stringify([file, line, original, replacement]),
  );
  expect(keys.filter((it, nth) => keys.indexOf(it) !== nth)).toEqual([]);
});
