import { describe, expect, test } from "vitest";
import table from "../../../shared/reference/grounding-cable.json";
import { withstandAmps } from "./grounding";

const codeOf = (size: string) => size.split(" ")[0]!;
const CYCLE = 1 / 60;

describe("R4 ASTM F855 grounding cable ratings, as reprinted (shared/reference/grounding-cable.json)", () => {
  test.each(table.rows.map((row) => [row.cableSizeAwgCopper, row] as const))(
    "%s: the published rows come out",
    (size, row) => {
      expect(withstandAmps(codeOf(size), 15 * CYCLE)).toBeCloseTo(1000 * row.withstandKa15Cycles, 6);
      expect(withstandAmps(codeOf(size), 30 * CYCLE)).toBeCloseTo(1000 * row.withstandKa30Cycles, 6);
    },
  );

  test.each(table.rows.map((row) => [row.cableSizeAwgCopper, row] as const))(
    "%s: flat below 15 cycles, constant I²t above 30",
    (size, row) => {
      expect(withstandAmps(codeOf(size), 5 * CYCLE)).toBe(1000 * row.withstandKa15Cycles);
      expect(withstandAmps(codeOf(size), 120 * CYCLE)).toBeCloseTo((1000 * row.withstandKa30Cycles) / 2, 6);
    },
  );

  test.each(table.highAsymmetry.rows.map((row) => [row.cableSizeAwgCopper, row] as const))(
    "%s: above X/R 1.8 no more than the high-asymmetry rating, and never more than the plain one",
    (size, row) => {
      const plain = withstandAmps(codeOf(size), row.durationCycles * CYCLE)!;
      const high = withstandAmps(codeOf(size), row.durationCycles * CYCLE, 1.9)!;
      expect(high).toBeCloseTo(Math.min(plain, 1000 * row.ratedSymmetricalKa), 6);
      expect(withstandAmps(codeOf(size), row.durationCycles * CYCLE, 1.8)).toBe(plain);
    },
  );

  test.each(table.rows.map((row) => [row.cableSizeAwgCopper, row] as const))(
    "%s: the published ultimate figures agree with Onderdonk's equation within the 1.4 kA that the table states",
    (_size, row) => {
      const areas: Record<string, number> = {
        "2": 66360,
        "1/0": 105600,
        "2/0": 133100,
        "3/0": 167800,
        "4/0": 211600,
        "250": 250000,
        "350": 350000,
      };
      const { Tm, Ta } = { Tm: 1083, Ta: 40 };
      const melts = (seconds: number) =>
        (0.98 *
          areas[codeOf(row.cableSizeAwgCopper)]! *
          Math.sqrt(Math.log10((Tm - Ta) / (234 + Ta) + 1) / (33 * seconds))) /
        1000;
      expect(Math.abs(melts(0.25) - row.ultimateKa15Cycles)).toBeLessThanOrEqual(1.4);
      expect(Math.abs(melts(0.5) - row.ultimateKa30Cycles)).toBeLessThanOrEqual(1.4);
      expect(Math.abs(melts(1) - row.ultimateKa60Cycles)).toBeLessThanOrEqual(1.4);
    },
  );

  test("a size below the table withstands what No. 2 does by its cross-section; an unknown one nothing that is known", () => {
    // Circular mils by ASTM B258: No. 2 66 360, No. 4 41 740, No. 6 26 240, No. 8 16 510.
    expect(withstandAmps("4", 0.5)! / withstandAmps("2", 0.5)!).toBeCloseTo(0.629, 3);
    expect(withstandAmps("8", 0.1)).toBe(withstandAmps("8", 0.25));
    expect(withstandAmps("6", 2)! / withstandAmps("6", 0.5)!).toBeCloseTo(0.5, 6);
    expect(withstandAmps("10", 0.5)).toBeUndefined();
  });
});
