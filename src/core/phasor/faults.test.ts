import { describe, expect, test } from "vitest";
import worked from "../../../shared/feeders/worked-examples.json";
import { circuitOf } from "../network";
import type { System } from "../document";
import { type PointId } from "../terms";
import { faultAmpsAt } from "./faults";

const system = (elements: object, points: object): System =>
  ({ frequencyHz: 60, points, elements }) as unknown as System;

describe("S11 fault currents by Thévenin", () => {
  test("fault-1: the end of a 5 mile line, exactly by phases (shared/feeders/worked-examples.json)", () => {
    const given = worked.examples.find(({ id }) => id === "fault-1")!.result as unknown as {
      phase_matrix_method_A: {
        three_phase_abc: number[];
        line_to_ground_a_b_c: number[];
        line_to_line_ab_bc_ca: number[];
      };
    };
    const line = worked.examples.find(({ id }) => id === "line-1")!.result as unknown as {
      phase_matrix_after_Kron_ohm_per_mile: [number, number][][];
    };
    const perKm = line.phase_matrix_after_Kron_ohm_per_mile.map((row) =>
      row.map((z) => z.map((it) => it / 1.609344)),
    );
    const circuit = circuitOf(
      system(
        {
          s: { kind: "source", at: "a", phases: "ABC", kvLL: 12.47, z1Ohms: [0, 1e-6], z0Ohms: [0, 1e-6] },
          l: {
            kind: "span",
            from: "a",
            to: "b",
            phases: "ABC",
            neutral: false,
            lengthM: 5 * 1609.344,
            zOhmsPerKm: perKm,
            bMicroSPerKm: [
              [0, 0, 0],
              [0, 0, 0],
              [0, 0, 0],
            ],
          },
        },
        { a: {}, b: {} },
      ),
    );
    const { threePhase, phaseToPhase, phaseToGround } = faultAmpsAt(circuit, "b" as PointId);
    const { three_phase_abc, line_to_ground_a_b_c, line_to_line_ab_bc_ca } = given.phase_matrix_method_A;
    for (const [found, published] of [
      [threePhase!, Math.max(...three_phase_abc)],
      [phaseToPhase!, Math.max(...line_to_line_ab_bc_ca)],
      [phaseToGround!, Math.max(...line_to_ground_a_b_c)],
    ] as const)
      expect(Math.abs(found - published) / published).toBeLessThan(0.0005);
  });

  test("xfmr-2: 25 kVA at 240 V behind a stiff primary (shared/feeders/worked-examples.json)", () => {
    const circuit = circuitOf(
      system(
        {
          s: {
            kind: "source",
            at: "a",
            phases: "A",
            kvLL: 7.2 * Math.sqrt(3),
            z1Ohms: [0, 1e-6],
            z0Ohms: [0, 1e-6],
          },
          t: {
            kind: "transformer",
            from: "a",
            to: "b",
            phases: "A",
            connection: "single",
            kva: 25,
            primaryKv: 7.2,
            secondaryV: 240,
            rPercent: 1.2,
            xPercent: 1.7,
            excitingPercent: 0.001,
          },
        },
        { a: {}, b: {} },
      ),
    );
    expect(faultAmpsAt(circuit, "b" as PointId).phaseToPhase! / 5005.9).toBeCloseTo(1, 3);
  });
});
