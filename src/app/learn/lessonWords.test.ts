import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { FIRST_LESSON, isUnreadable, readDocument } from "../../core";
import { learn } from "../words/catalogue";
import { english } from "../words/messages/en";
import { learn as french } from "../words/messages/fr/learn";
import { speech } from "../words/language.svelte";
import { inOwnWords } from "./lessonWords";

const read = readDocument(readFileSync(`shared/scenarios/${FIRST_LESSON}.stillhot.json`, "utf8"));
if (isUnreadable(read)) throw new Error("the scenario does not read");
const { document } = read;

test("in English the drawing of the lesson is the file's own", () => {
  learn(english);
  const { title, job, system } = inOwnWords(document);
  expect([title, job, system]).toEqual([document.title, document.job, document.system]);
});

test("in French every name of the drawing is French, or a name", async () => {
  learn(english);
  await speech.use("fr");
  const own = inOwnWords(document);
  const labels = (it: unknown): string[] =>
    typeof it !== "object" || it === null
      ? []
      : Object.entries(it).flatMap(([key, value]) => (key === "label" ? [String(value)] : labels(value)));
  const plainly = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");
  const said = new Set(Object.values(french).map(plainly));
  const shown = [own.title, ...labels(own.system), ...labels(own.job)].map(plainly);
  expect(shown.filter((it) => !said.has(it))).toEqual([]);
  expect(shown.length).toBe(20);
  await speech.use("en");
});
