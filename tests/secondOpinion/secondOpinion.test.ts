/**
 * The whole answer against a second implementation, which was written from the file format's page without sight of the
 * first: states, volts, amperes, every threat with its numbers, margins, verdicts and findings.
 */
import { describe, expect, test } from "vitest";
import { randomDocument } from "../support/randomSystems";
import { compare, type Compared } from "./compare";
import { nastyDocument } from "./nasty";
import { draws } from "../support/draws";

const MOST_SETS = 30;
/** Every set of upsets is solved densely, each group of sources by itself: much for a machine that has other work [ms]. */
const LONG_MS = 240_000;

function compareAll(name: string, documents: readonly (readonly [string, unknown])[], least: number) {
  test(
    name,
    () => {
      const asked: Compared[] = [];
      const apart: string[] = [];
      for (const [title, document] of documents) {
        const compared = compare(document, MOST_SETS);
        if (compared.skipped !== undefined) continue;
        asked.push(compared);
        apart.push(...compared.differences.map((it) => `${title}, ${it}`));
      }
      expect(apart).toEqual([]);
      expect(asked.length).toBeGreaterThan(draws(least));
    },
    LONG_MS,
  );
}

const seeds = (from: number, count: number) => Array.from({ length: draws(count) }, (_, k) => from + k);

describe("a second implementation of the format's page comes to the same answers", () => {
  compareAll(
    "ordinary drawings",
    seeds(0, 40).map((seed) => [`random ${seed}`, randomDocument(seed, { parts: 6 })]),
    24,
  );
  for (const from of [0, 30])
    compareAll(
      `drawings in which much is wrong, from ${from}`,
      seeds(from, 30).map((seed) => [`nasty ${seed}`, nastyDocument(seed, 6)]),
      17,
    );
});
