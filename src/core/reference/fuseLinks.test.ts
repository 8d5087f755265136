import { describe, expect, test } from "vitest";
import table from "../../../shared/reference/fuse-links.json";
import { linkRatings, meltAmps, meltSeconds } from "./fuseLinks";

/** The rows are from memory (C37.42, NEMA SG-2): a regression against `shared/reference/fuse-links.json`, no more. */
describe("Melting times of fuse links, from memory", () => {
  test.each(table.rows)("$type $ratedAmps stands on the table's own points", (row) => {
    const link = { type: row.type as "K" | "T", amps: row.ratedAmps };
    const points = [
      [row.longTimeSeconds, row.minMeltAmpsLong, row.maxMeltAmpsLong],
      [10, row.minMeltAmps10s, row.maxMeltAmps10s],
      [0.1, row.minMeltAmps0p1s, row.maxMeltAmps0p1s],
    ] as const;
    for (const [seconds, least, most] of points) {
      expect(meltAmps(link, seconds)).toEqual({ least, most });
      expect(meltSeconds(link, least).least).toBeCloseTo(seconds, 9);
      expect(meltSeconds(link, most).most).toBeCloseTo(seconds, 9);
    }
  });

  test.each([
    ["below its long-time current it never melts", 49, Infinity],
    // 60 A in 10 s and 350 A in 0.1 s: half way on both logarithmic scales is 144.9 A in 1 s
    ["half way between two points on logarithmic scales", Math.sqrt(60 * 350), 1],
    // above 0.1 s the heat has nowhere to go: I²t = 350² · 0.1
    ["above the last point I²t stays", 3500, 0.001],
  ])("25 K: %s", (_why, amps, seconds) => {
    expect(meltSeconds({ type: "K", amps: 25 }, amps).least).toBeCloseTo(seconds, 9);
  });

  test("more current never takes longer, and the quickest is never later than the slowest", () => {
    for (const type of ["K", "T"] as const)
      for (const amps of [...linkRatings(type), 3, 7]) {
        let before = { least: Infinity, most: Infinity };
        for (let at = amps; at < amps * 200; at *= 1.07) {
          const now = meltSeconds({ type, amps }, at);
          expect(now.least).toBeLessThanOrEqual(now.most);
          expect(now.least).toBeLessThanOrEqual(before.least);
          expect(now.most).toBeLessThanOrEqual(before.most);
          before = now;
        }
      }
  });

  test.each(table.crossCheck.rows)(
    "$type at $seconds s: a rating outside the table takes the verified generic curve",
    ({ type, seconds, genericMultiple }) => {
      const { least } = meltAmps({ type: type as "K" | "T", amps: 7 }, seconds);
      expect(least / 7).toBeCloseTo(genericMultiple, 1);
    },
  );
});
