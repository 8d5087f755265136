import { readdirSync } from "node:fs";
import { expect, test } from "vitest";
import type { MessageKey } from "../../message";
import { english } from "../en";
import { french } from "./index";

/** Gaps of a sentence. A sentence in another language has the same ones, in whatever order. */
const gapsOf = (sentence: string): string[] =>
  [...new Set([...sentence.matchAll(/\{(\w+)\}/g)].map((it) => it[1]!))].sort();

const keys = Object.keys(english) as MessageKey[];

test("M1 every English sentence has a French one: add it to the file of the same name", () => {
  expect(keys.filter((key) => french[key] === undefined)).toEqual([]);
});

test("M1 no French sentence is left over", () => {
  expect(Object.keys(french).filter((key) => !(key in english))).toEqual([]);
});

test("M2 each has the same gaps", () => {
  const unlike = keys.filter(
    (key) => french[key] !== undefined && gapsOf(french[key]).join() !== gapsOf(english[key]).join(),
  );
  expect(unlike).toEqual([]);
});

test("M3 in no language is anything called safe", () => {
  // What a word must not promise may well be denied.
  const promises = keys.filter((key) =>
    /\b(en sécurité|sans danger|est sûr|sécuritaire)\b/i.test(french[key] ?? ""),
  );
  expect(promises).toEqual([]);
});

test("a file of messages for each English one", () => {
  const files = (folder: string) =>
    readdirSync(`src/core/terms/messages/${folder}`).filter((it) => !/first.ts$|.test.ts$/.test(it));
  expect(files("fr").sort()).toEqual(files("en").sort());
});
