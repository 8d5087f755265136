import { describe, expect, test } from "vitest";
import { generateTap, generateTapText, type Level, LEVELS, TAP_VERSIONS } from "../../src/core";
import { shapeOf } from "../../src/core/practice/generate/shape";
import { fingerprint, notStanding, otherStates, tapOf, unplanned } from "./generated";

/** A thousand of each are asked by `npm run soak`; here a sample that differs from level to level. */
const sampleOf = (level: Level, count: number) => Array.from({ length: count }, (_, at) => 97 * level + at);

describe.each(LEVELS)("generated taps of level %i", (level) => {
  test("are read without a warning, stand on structures, and are like neither neighbour", () => {
    let before = "";
    for (const seed of sampleOf(level, 40)) {
      const { document } = tapOf(level, seed);
      expect([seed, notStanding(document)]).toEqual([seed, []]);
      const shape = shapeOf(document.system);
      expect(shape, `seed ${seed}`).not.toBe(before);
      before = shape;
    }
  });

  test("have the states that the second implementation finds, and a feed for every conductor", () => {
    for (const seed of sampleOf(level, 3)) {
      const { document } = tapOf(level, seed);
      expect([seed, otherStates(document)]).toEqual([seed, []]);
    }
  });

  test("are planned cleanly, or it is said why not", () => {
    for (const seed of sampleOf(level, level < 5 ? 3 : 1))
      expect([seed, unplanned(tapOf(level, seed).document)]).toEqual([seed, []]);
  });

  test("differ in words alone from one language to the other", () => {
    const withoutWords = (language: "en" | "fr") =>
      JSON.stringify(generateTap({ level, seed: 5, language }), (key, it: unknown) =>
        ["label", "title", "notes", "task"].includes(key) ? "" : it,
      );
    expect(withoutWords("fr")).toBe(withoutWords("en"));
  });
});

/** What a seed gives is a promise: a class that was told a number gets the same drawing years later. */
test("the same level, seed and version give the same bytes for ever", () => {
  const texts = LEVELS.flatMap((level) =>
    [...Array(20).keys(), 4294967295].flatMap((seed) =>
      (["en", "fr"] as const).map((language) => generateTapText({ level, seed, version: 1, language })),
    ),
  );
  expect(new Set(texts).size).toBe(texts.length);
  expect(fingerprint(texts)).toBe("8acf4b4983ecdf010889b36306880b850305720dcd01a86f689efb8918eb3475");
  expect(TAP_VERSIONS).toEqual([1]);
});
