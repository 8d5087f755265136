import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { english as appEnglish } from "../src/app/words/messages/en";
import { cli as cliEnglish } from "../src/cli/messages/en";
import { alsoCalled, english, inWordsOf, type Region, REGION_IDS, REGIONS, saidIn } from "../src/core";

/** Every English sentence of the program. */
const USUAL: Readonly<Record<string, string>> = { ...english, ...appEnglish, ...cliEnglish };

const withoutGaps = (sentence: string): string => sentence.replaceAll(/\{\w+\}/g, "…");
const anyOf = (words: readonly string[]): RegExp => new RegExp(`\\b(?:${words.join("|")})\\b`, "i");
const keysWith = (sentences: Readonly<Partial<Record<string, string>>>, words: readonly string[]): string[] =>
  Object.keys(sentences)
    .filter((key) => anyOf(words).test(withoutGaps(sentences[key]!)))
    .sort();

/** Usual sentences that say a region's word, each with the reason. */
const OTHERWISE: Readonly<Record<string, string>> = {
  "cli.overview": "tells what the option is for",
  "guide.word.cutout.also": "tells how its barrel is called elsewhere",
  "guide.word.permit.also": "tells how it is called elsewhere",
  "guide.word.tailboard.also": "tells how it is called elsewhere",
  "sheet.document": "the paper, not the talk that is held from it",
};

describe.each(REGION_IDS)("In the words of the region %s", (id) => {
  const region = REGIONS[id];
  const said = inWordsOf(region, USUAL);
  const each = region.words.flatMap(({ one, many }) => [many, one]);
  const usualWords = each.map(([usual]) => usual);
  const itsWords = each.map(([, its]) => its);

  test("no sentence says a usual word, but for those that the region's file names", () => {
    const named = [...Object.keys(region.sentences), ...region.kept].sort();
    expect(keysWith(said, usualWords)).toEqual(named);
    expect(named.filter((key) => !(key in USUAL))).toEqual([]);
    expect(keysWith(USUAL, usualWords).length).toBeGreaterThan(50);
  });

  test("each of its words is said", () => {
    for (const { one } of region.words) expect(keysWith(said, [one[1]])).not.toEqual([]);
  });

  test("all else stands as it stood: gaps, numbers and every other word", () => {
    const rest = (sentence: string) =>
      sentence.replaceAll(
        new RegExp(`(?<!\\{)(?:\\ban? )?${anyOf([...usualWords, ...itsWords]).source}`, "gi"),
        "·",
      );
    const others = Object.keys(USUAL).filter((key) => !(key in region.sentences));
    expect(others.filter((key) => rest(said[key]!) !== rest(USUAL[key]!))).toEqual([]);
    expect(Object.keys(said)).toEqual(Object.keys(USUAL));
    for (const key of Object.keys(region.sentences))
      expect(said[key]!.match(/\{\w+\}/g)).toEqual(USUAL[key]!.match(/\{\w+\}/g));
  });

  test("each of its words stands after its own article, and begins as the usual one does", () => {
    for (const { one, article } of region.words) {
      const befores = Object.values(said).flatMap((it) =>
        [...it!.matchAll(new RegExp(`\\b(an?) ${one[1]}\\b`, "gi"))].map(([, before]) =>
          before!.toLowerCase(),
        ),
      );
      expect(befores.filter((it) => it !== article)).toEqual([]);
      expect(article).toBe(/^[aeiou]/.test(one[1]) ? "an" : "a");
    }
    const isCapital = (it: string) => it.charAt(0) !== it.charAt(0).toLowerCase();
    expect(Object.keys(USUAL).filter((key) => isCapital(said[key]!) !== isCapital(USUAL[key]!))).toEqual([]);
  });

  test("what the catalogue says, it says by one word: none of the region's, but where that is named", () => {
    expect(keysWith(USUAL, itsWords).filter((key) => !Object.hasOwn(OTHERWISE, key))).toEqual([]);
  });

  test("either word finds what the other one names", () => {
    for (const [usual, its] of each) {
      expect(alsoCalled([region], `Ask for the ${usual}`).join(" ")).toContain(its.replace(/s$/, ""));
      expect(alsoCalled([region], `Ask for the ${its}`).join(" ")).toContain(usual.replace(/s$/, ""));
    }
    expect(alsoCalled([region], "Open the cutout")).toEqual([]);
  });
});

test("a region is one file, and a line of the list", () => {
  const files = readdirSync("src/core/terms/regions");
  const others = ["ids.ts", "index.ts", "region.ts"];
  const regions = files.filter((it) => !others.includes(it));
  expect(regions.length).toBe(REGION_IDS.length);
  expect(Object.keys(REGIONS)).toEqual([...REGION_IDS]);
  const names = Object.values(REGIONS).map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
});

const ANOTHER: Region = {
  name: "another",
  words: [
    { one: ["permit", "approval"], many: ["permits", "approvals"], article: "an" },
    { one: ["barrel", "fuse tube"], many: ["barrels", "fuse tubes"], article: "a" },
  ],
  sentences: { whole: "as it is said there" },
  kept: ["measure"],
};

test.each([
  ["a permit is held", "an approval is held"],
  ["A permit is asked for: {reason}.", "An approval is asked for: {reason}."],
  ["Permit {permit}, held by {permits}", "Approval {permit}, held by {permits}"],
  ["people, grounds, permits, tags", "people, grounds, approvals, tags"],
  ["BARREL OUT{phases}", "FUSE TUBE OUT{phases}"],
  ["a held permit", "a held approval"],
  ["the rule permit-first, and receive-permit", "the rule permit-first, and receive-permit"],
  ["is permitted", "is permitted"],
  ["Barrel out; the barrel's gas", "Fuse tube out; the fuse tube's gas"],
])("%s: %s", (usual, said) => {
  expect(saidIn(ANOTHER, usual)).toBe(said);
});

test("a sentence of the region's own is said whole, and one that means another thing stays", () => {
  const usual = { whole: "a permit", measure: "a barrel of oil", other: "the permit" };
  expect(inWordsOf(ANOTHER, usual)).toEqual({
    whole: "as it is said there",
    measure: "a barrel of oil",
    other: "the approval",
  });
});
