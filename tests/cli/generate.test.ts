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
  ["generate --level 1 --seed 1 --version 3", /--version 3: expected/],
  ["generate --level 1 --seed 1 tap.json", /takes no file/],
])("%s is refused", async (words, message) => {
  const { code, out, err } = await line(words.split(" "));
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toMatch(message);
});

test("a worksheet and its key are pages of their own, and one list as data", async () => {
  const asked = ["drill", "--level", "1", "--seed", "3", "--count", "2"];
  const [sheet, key, json, french] = await Promise.all([
    line(asked),
    line([...asked, "--key"]),
    line([...asked, "--json"]),
    line([...asked, "--language", "fr"]),
  ]);
  const { questions } = JSON.parse(json.out);
  expect(questions).toHaveLength(2);
  expect(questions[0]).toMatchObject({ n: 1, answer: [expect.any(String)], drawing: { format: "stillhot" } });
  expect(sheet.out).toContain("<h1>Worksheet</h1>");
  expect(sheet.out).toContain("<svg");
  expect(sheet.out).not.toContain(questions[0].why);
  expect(key.out).toContain("<h1>Key to the worksheet</h1>");
  expect(french.out).toContain('<html lang="fr">');
  expect([sheet, key, json, french].every(({ code, err }) => code === 0 && err === "")).toBe(true);
});
