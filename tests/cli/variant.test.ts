import { mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { line } from "./line";

const LINDENS = "shared/scenarios/lindens.stillhot.json";

test("twelve variants are written into a folder, each another scenario that validates", async () => {
  const folder = mkdtempSync(join(tmpdir(), "class-"));
  const { code, err } = await line(["variant", LINDENS, "--count", "12", "-o", folder]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const files = readdirSync(folder);
  expect(files).toHaveLength(12);
  expect(new Set(files.map((it) => readFileSync(join(folder, it), "utf8"))).size).toBe(12);
  expect((await line(["validate", ...files.map((it) => join(folder, it))])).code).toBe(0);
});

test("a name has its variant, the same as its number", async () => {
  const byName = await line(["variant", LINDENS, "--name", "Kim", "--json"]);
  const { number, scenario } = JSON.parse(byName.out) as { number: number; scenario: object };
  const byNumber = await line(["variant", LINDENS, "--number", String(number)]);
  expect(JSON.parse(byNumber.out)).toEqual(scenario);
});

test.each([
  [`variant ${LINDENS} --number 0`, /--number 0: expected a whole number from 1 to 9999/],
  [`variant ${LINDENS} --count 3`, /needs -o and a folder/],
  [`variant ${LINDENS} --name Kim --number 2`, /--name goes with neither/],
  [`variant ${LINDENS} --number 9999 --count 2 -o x`, /above 9999/],
  [`variant ${LINDENS} ${LINDENS}`, /takes one FILE/],
  ["variant shared/demos/sideline-three-transformers.stillhot.json", /holds no scenario/],
])("%s is refused", async (words, message) => {
  const { code, out, err } = await line(words.split(" "));
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(message);
});
