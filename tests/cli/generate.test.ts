import { expect, test } from "vitest";
import { line } from "./line";

test("a drawing is printed that validate reads without a finding", async () => {
  const { code, out, err } = await line(["generate", "--level", "3", "--seed", "7"]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  expect((await line(["validate", "-"], { stdin: [out] })).code).toBe(0);
  const json = await line(["generate", "--level=3", "--seed=7", "--version=1", "--json"]);
  expect(JSON.parse(json.out)).toMatchObject({ level: 3, seed: 7, version: 1, drawing: JSON.parse(out) });
});

test("names are French where French is asked for", async () => {
  const { out } = await line(["generate", "--level", "1", "--seed", "0", "--language", "fr"]);
  expect(out).toContain("Poteau");
});

test.each([
  ["generate", /--level is needed: a whole number from 1 to 6/],
  ["generate --level 7 --seed 1", /--level 7: expected a whole number from 1 to 6/],
  ["generate --level 1", /--seed is needed/],
  ["generate --level 1 --seed -1", /--seed -1: expected a whole number from 0 to 4294967295/],
  ["generate --level 1 --seed 1 --version 2", /--version 2: expected/],
  ["generate --level 1 --seed 1 tap.json", /takes no file/],
])("%s is refused", async (words, message) => {
  const { code, out, err } = await line(words.split(" "));
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(message);
});
