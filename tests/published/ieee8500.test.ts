import { describe, expect, test } from "vitest";
import {
  type Assessment,
  assess,
  assessWithoutWork,
  type ConductorId,
  cutAround,
  exportModel,
  ModelImport,
  type PointId,
} from "../../src/core";
import { done } from "../support/imported";
import { drawing8500, feeder8500, type LoadCase, volts8500 } from "../support/ieee8500";

/** Bounds of the volts: a share of them [1], half of the last digit that is printed of the largest [V], the angle as it is printed [°]. */
const WITHIN = 1e-4;
const DIGITS = 0.05;
const DEGREES = 0.011;
/** Letters of a model that are handed on at a time, as a stream would. */
const PIECE = 65_536;

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

  test("written as a utility's model and read again: every conductor's state and volts", () => {
    const drawn = drawing8500("unbalanced");
    const model = new ModelImport();
    const { text } = exportModel(drawn);
    for (let at = 0; at < text.length; at += PIECE) model.write(text.slice(at, at + PIECE));
    model.endFile();
    const again = assessWithoutWork(done(model.finish()).document).conductors;
    const wrong = Object.entries(assessWithoutWork(drawn).conductors).filter(([id, { state, volts }]) => {
      const other = again[id as ConductorId];
      return other?.state !== state || !(Math.abs(other.volts - volts) <= 1e-6 * Math.max(1, volts));
    });
    expect(wrong.map(([id]) => id)).toEqual([]);
    expect(Object.keys(again)).toHaveLength(12129);
  });

  test("H14 the piece around one transformer says what the whole says", () => {
    const whole = drawing8500("balanced");
    const at = "L2804253" as PointId;
    const job = { workPoints: { w1: { at, conductors: "A" } } };
    const piece = cutAround(whole, [at], 2);
    expect(piece.parts).toHaveLength(1);
    expect(Object.keys(piece.document.system.points).length).toBeLessThan(1000);
    const own = assess({ ...piece.document, job });
    const there = assess({ ...whole, job });
    const told = ({ workPoints }: Assessment) => {
      const { verdict, margin, threats } = workPoints["w1" as never]!;
      return { verdict, margin, sets: threats.map(({ conductor, upsets }) => ({ conductor, upsets })) };
    };
    expect(told(own)).toEqual(told(there));
    let worst = 0;
    for (const [id, { volts, voltsLoadsOff }] of Object.entries(own.conductors)) {
      const other = there.conductors[id as ConductorId]!;
      if (!id.endsWith("/N"))
        worst = Math.max(
          worst,
          Math.abs(volts - other.volts) / Math.max(1, other.volts),
          Math.abs(voltsLoadsOff - other.voltsLoadsOff) / Math.max(1, other.voltsLoadsOff),
        );
    }
    expect(worst).toBeLessThan(1e-3);
    own.workPoints["w1" as never]!.threats.forEach(({ volts, exposureVolts }, nth) => {
      const other = there.workPoints["w1" as never]!.threats[nth]!;
      expect(Math.abs(volts / other.volts - 1)).toBeLessThan(1e-3);
      expect(Math.abs(exposureVolts / other.exposureVolts - 1)).toBeLessThan(1e-3);
    });
  });
});
