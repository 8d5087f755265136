import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { english as core, french as coreFrench } from "../../core";
import { english as own } from "../words/messages/en";
import { french as ownFrench } from "../words/messages/fr";
import { sentencesWith, usedIn, type WordId, WORD_IDS } from "./glossary";

const english: Readonly<Record<string, string>> = { ...core, ...own };
const french: Readonly<Record<string, string>> = { ...coreFrench, ...ownFrench };
const word = (catalogue: Readonly<Record<string, string>>, id: WordId) => catalogue[`guide.word.${id}`]!;

test("no two words of the glossary have one French word, and none has two in English", () => {
  for (const catalogue of [english, french]) {
    const words = WORD_IDS.flatMap((id) => word(catalogue, id).split(", "));
    expect(words.filter((it, index) => words.indexOf(it) !== index)).toEqual([]);
  }
});

/** French sentences that say it without the word, each with the reason. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "importing.deltaBehindSwitch": "what a delta capacitor is joined by are its phases",
  "withTool.lead-cutters": "the tool has a name of its own",
};

test.each(WORD_IDS)("where English says %s, French says its one word for it", (id) => {
  const keys = sentencesWith(id, english, "en");
  const inFrench = new Set(sentencesWith(id, french, "fr"));
  const others = keys.filter((key) => !inFrench.has(key) && !Object.hasOwn(OTHERWISE, key));
  expect(others.map((key) => `${key}: ${english[key]} | ${french[key]}`)).toEqual([]);
});

test("a place of the app is called by no word of the trade that means something else", () => {
  const places = Object.entries(french).filter(([key]) => key.startsWith("place."));
  const words = new Map(WORD_IDS.map((id) => [word(french, id), id]));
  const shared = places.flatMap(([, name]) => words.get(name.toLowerCase()) ?? []).map(String);
  expect(shared).toEqual(["debrief"]);
});

const plain = (text: string) => text.replaceAll(/[\u00A0\u202F]/g, " ");

/** A row of the page without where the word is used, which every new sentence may add to. */
const rowOf = (id: WordId): string => {
  const cells = [english, french].flatMap((catalogue) => [
    `**${word(catalogue, id)}**`,
    [`guide.word.${id}.is`, `guide.word.${id}.also`]
      .map((key) => catalogue[key]!)
      .filter((it) => it !== "-")
      .join(" "),
  ]);
  return plain(`| ${cells.join(" | ")} |`);
};

test("docs/glossary.md is the glossary of Help, word by word, and each word is used where it says", () => {
  const lines = readFileSync("docs/glossary.md", "utf8").split("\n");
  const rows = lines.filter((it) => it.startsWith("| **"));
  expect(rows.map((it) => it.slice(0, it.lastIndexOf("| ", it.length - 3) + 1))).toEqual(WORD_IDS.map(rowOf));
  for (const [index, id] of WORD_IDS.entries()) {
    const said = rows[index]!.split("|").at(-2)!.trim().split(", ");
    const places = usedIn(id, english, "en").map((it) => english[it]!.replace(/:.*/, ""));
    expect(said.filter((it) => it !== "everywhere" && !places.includes(it))).toEqual([]);
    expect(said.length).toBeGreaterThan(0);
  }
});
