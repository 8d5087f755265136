import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { english as appEnglish } from "../src/app/words/messages/en";
import { french as appFrench } from "../src/app/words/messages/fr";
import { cli as cliEnglish } from "../src/cli/messages/en";
import { cli as cliFrench } from "../src/cli/messages/fr";
import { type Catalogue, english, french } from "../src/core";

/** What the core says, and what only the app or the command line says beside it. */
const CATALOGUES: readonly (readonly [string, Catalogue, Catalogue])[] = [
  ["the core", english, french],
  ["the app", appEnglish, appFrench],
  ["the command line", cliEnglish, cliFrench],
];

/** Gaps of a sentence. A sentence in another language has the same ones, in whatever order. */
const gapsOf = (sentence = ""): string[] =>
  [...new Set([...sentence.matchAll(/\{(\w+)\}/g)].map((it) => it[1]!))].sort();

describe.each(CATALOGUES)("%s", (_, inEnglish, inFrench) => {
  const keys = Object.keys(inEnglish);

  test("M1 every English sentence has a French one: add it to the file of the same name", () => {
    expect(keys.filter((key) => inFrench[key] === undefined)).toEqual([]);
  });

  test("M1 no French sentence is left over", () => {
    expect(Object.keys(inFrench).filter((key) => !(key in inEnglish))).toEqual([]);
  });

  test("M2 each has the same gaps", () => {
    const unlike = keys.filter((key) => gapsOf(inFrench[key]).join() !== gapsOf(inEnglish[key]).join());
    expect(unlike).toEqual([]);
  });

  test("M3 in no language is anything called safe", () => {
    // What a word must not promise may well be denied.
    const promises = keys.filter((key) =>
      /\b(en sécurité|sans danger|est sûr|sécuritaire)\b/i.test(inFrench[key] ?? ""),
    );
    expect(promises).toEqual([]);
  });
});

test("no sentence stands in two catalogues", () => {
  const keys = CATALOGUES.flatMap(([, inEnglish]) => Object.keys(inEnglish));
  expect(keys.filter((key, index) => keys.indexOf(key) !== index)).toEqual([]);
});

test.each(["src/core/terms/messages", "src/app/words/messages"])(
  "a file of messages for each English one: %s",
  (folder) => {
    const files = (language: string) =>
      readdirSync(`${folder}/${language}`).filter((it) => it !== "first.ts");
    expect(files("fr").sort()).toEqual(files("en").sort());
  },
);
