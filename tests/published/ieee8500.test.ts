import { describe, expect, test } from "vitest";
import { assessWithoutWork, type ConductorId } from "../../src/core";
import { drawing8500, feeder8500, type LoadCase, volts8500 } from "../support/ieee8500";

/** Bounds of the volts: a share of them [1], half of the last digit that is printed of the largest [V], the angle as it is printed [°]. */
const WITHIN = 1e-4;
const DIGITS = 0.05;
const DEGREES = 0.011;

/**
 * The IEEE 8500-node feeder, whole: R. F. Arritt, R. C. Dugan, "The IEEE 8500-node test feeder", IEEE PES T&D 2010.
 * Its tables, their source and licence, and the solutions that they are held against stand in shared/import/ieee8500;
 * those agree with the printed ones within 0.03 %.
 */
describe("IEEE 8500-node feeder", () => {
  test.each(["balanced", "unbalanced"] as const)("%s loads: every conductor's volts", (of: LoadCase) => {
    const { conductors, findings } = assessWithoutWork(drawing8500(of));
    const lettersOf = new Map(feeder8500().data.buses.map(([id, , , letters]) => [id, letters]));
    const wrong: string[] = [];
    let compared = 0;
    for (const [bus, ...figures] of volts8500(of))
      [...lettersOf.get(bus)!].sort().forEach((letter, nth) => {
        const [volts, degrees] = [figures[2 * nth]!, figures[2 * nth + 1]!];
        const report = conductors[`${bus}/${letter}` as ConductorId]!;
        const apart = Math.abs(((report.angleDeg - degrees + 540) % 360) - 180);
        compared++;
        if (!(Math.abs(report.volts - volts) < DIGITS + WITHIN * volts) || (volts > 1 && !(apart < DEGREES)))
          wrong.push(
            `${bus}/${letter} ${report.volts} V ${report.angleDeg}°, expected ${volts} V ${degrees}°`,
          );
      });
    expect(wrong).toEqual([]);
    expect(compared).toBe(8534);
    expect(findings.filter(({ severity }) => severity === "danger")).toEqual([]);
  });
});
