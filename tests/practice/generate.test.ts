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
const FOR_EVER = [
  [1, "8acf4b4983ecdf010889b36306880b850305720dcd01a86f689efb8918eb3475"],
  [2, "8594e0c4a01ce61b3e8a7026798840b6b157db09143fce129a3e70d1c7252090"],
] as const;

test.each(FOR_EVER)(
  "the same level and seed give the same bytes for ever in version %i",
  (version, wanted) => {
    const texts = LEVELS.flatMap((level) =>
      [...Array(20).keys(), 4294967295].flatMap((seed) =>
        (["en", "fr"] as const).map((language) => generateTapText({ level, seed, version, language })),
      ),
    );
    expect(new Set(texts).size).toBe(texts.length);
    expect(fingerprint(texts)).toBe(wanted);
  },
);

test("every version is held, and the newest is taken where none is named", () => {
  expect(TAP_VERSIONS).toEqual(FOR_EVER.map(([version]) => version));
  expect(generateTapText({ level: 1, seed: 2 })).toBe(generateTapText({ level: 1, seed: 2, version: 2 }));
});

test("version 2 is version 1 in English, and in French calls a lead as everything else here does", () => {
  const made = (version: number, language: "en" | "fr") =>
    LEVELS.map((level) => generateTapText({ level, seed: 3, version, language })).join("");
  expect(made(2, "en")).toBe(made(1, "en"));
  const leads = /liaison(?= (à la traversée|entre le|sous l'))/g;
  expect(made(1, "fr")).toMatch(leads);
  expect(made(2, "fr")).toBe(made(1, "fr").replace(leads, "bretelle"));
});
