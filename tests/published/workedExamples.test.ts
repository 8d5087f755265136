/** The worked examples of `shared/feeders/worked-examples.json`, each by its id and within the tolerance that it states. */
import { describe, expect, test } from "vitest";
import ieee4 from "../../shared/feeders/ieee4.json";
import examples from "../../shared/feeders/worked-examples.json";
import { capacitanceFaradPerKm, type LineConductor, primitiveOhmsPerKm } from "../../src/core/phasor/carson";
import { kronReduce, multiply } from "../../src/core/phasor/matrix";
import type { ConductorPosition } from "../../src/core/reference";
import { complex, type Complex } from "../../src/core/terms";
import {
  deviation,
  type Elements,
  expectReadings,
  FOOT_M,
  lineOf,
  MILE_KM,
  type Phasor,
  powerOf,
  reading,
  type SavedKeys,
  SOLID_OHMS,
  solved,
  type Solved,
  STIFF,
} from "./network";

const ROOT3 = Math.sqrt(3);
const KV = 7.2 * ROOT3;

const exampleOf = (id: string) => examples.examples.find((it) => it.id === id)!.result as never;

const magnitude = (network: Solved, probe: string) => complex.magnitude(reading(network, probe));

function expectClose(found: number, wanted: number, relative: number): void {
  expect(Math.abs(found / wanted - 1), `${found}, wanted ${wanted}`).toBeLessThan(relative);
}

const inFeet = (x: number, y: number): ConductorPosition => [x * FOOT_M, y * FOOT_M];
const conductor = (ohmsPerMile: number, gmrFeet: number, position: ConductorPosition): LineConductor => ({
  ohmsPerKm: ohmsPerMile / MILE_KM,
  gmrM: gmrFeet * FOOT_M,
  radiusM: 0.01,
  position,
});
const perMile = (matrix: readonly (readonly Complex[])[]) =>
  matrix.map((row) => row.map((it) => complex.scale(it, MILE_KM)));

function expectMatrix(
  found: readonly (readonly Complex[])[],
  wanted: readonly (readonly number[][])[],
  within: number,
): void {
  found.forEach((row, i) =>
    row.forEach((it, j) => {
      const apart = complex.subtract(it, wanted[i]![j] as unknown as Complex);
      expect(Math.max(Math.abs(apart[0]), Math.abs(apart[1])), `row ${i}, column ${j}: ${it}`).toBeLessThan(
        within,
      );
    }),
  );
}

describe("line impedances by Carson and Kron", () => {
  const neutral = conductor(0.592, 0.00814, inFeet(4, 24));
  const lineOfPhases = (ohmsPerMile: number, gmrFeet: number, across: readonly number[]) =>
    primitiveOhmsPerKm([...across.map((x) => conductor(ohmsPerMile, gmrFeet, inFeet(x, 28))), neutral], 60);
  /** printed to four decimals: half a digit beside the tolerance */
  const WITHIN = 1e-4 + 0.5e-4;

  test("line-1: 336,400 26/7 ACSR", () => {
    const wanted = exampleOf("line-1") as Record<string, number[][][]>;
    const primitive = lineOfPhases(0.306, 0.0244, [0, 2.5, 7]);
    const reduced = perMile(kronReduce(primitive, [0, 1, 2]));
    expectMatrix(perMile(primitive), wanted["primitive_abcn_ohm_per_mile"]!, WITHIN);
    expectMatrix(reduced, wanted["phase_matrix_after_Kron_ohm_per_mile"]!, WITHIN);
    expectMatrix(sequenceOf(reduced), wanted["sequence_matrix_012_ohm_per_mile"]!, WITHIN);
    expectMatrix(reduced, ieee4.line.four_wire_Z_ohm_per_mile, WITHIN);
    expectMatrix(
      perMile(primitive.slice(0, 3).map((row) => row.slice(0, 3))),
      ieee4.line.three_wire_Z_ohm_per_mile,
      WITHIN,
    );
  });

  test("line-2: 556,500 26/7 ACSR", () => {
    const wanted = exampleOf("line-2") as Record<string, number[][][]>;
    const reduced = perMile(kronReduce(lineOfPhases(0.1859, 0.0313, [0, 2.5, 7]), [0, 1, 2]));
    expectMatrix(reduced, wanted["phase_matrix_after_Kron_ohm_per_mile_left_to_right"]!, WITHIN);
  });
});

/** Symmetrical components of a matrix: A⁻¹ Z A, rows and columns in the order 0, 1, 2 (Fortescue 1918). */
function sequenceOf(phaseMatrix: readonly (readonly Complex[])[]): Complex[][] {
  const turn = (by: number): Complex => complex.polar(1, by * 120);
  const a = [0, 1, 2].map((row) => [0, 1, 2].map((column) => turn(-row * column)));
  const inverse = [0, 1, 2].map((row) => [0, 1, 2].map((column) => complex.scale(turn(row * column), 1 / 3)));
  return multiply(multiply(inverse, phaseMatrix), a);
}

describe("transformers", () => {
  const rows = exampleOf("xfmr-1") as { kVA: number; V: number; phases: number; A: number }[];
  test.each(rows.map((it) => [`${it.kVA} kVA at ${it.V} V, ${it.phases}-phase`, it] as const))(
    "xfmr-1: full-load current, %s",
    (_name, { kVA, V, phases, A }) => {
      const single = phases === 1;
      const network = solved({
        s: {
          kind: "source",
          at: "p",
          phases: single ? "A" : "ABC",
          kvLL: (V / 1000) * (single ? ROOT3 : 1),
          z1Ohms: [1e-9, 0],
          z0Ohms: [1e-9, 0],
        },
        ld: { kind: "load", at: "p", phases: single ? "A" : "ABC", kw: kVA },
      });
      // printed to a thousandth
      expect(Math.abs(magnitude(network, "ld@p/A") - A)).toBeLessThan(0.00051);
    },
  );

  const faults = exampleOf("xfmr-2") as {
    kVA: number;
    R_percent: number;
    X_percent: number;
    I_fault_240V_A: number;
    angle_deg: number;
    I_primary_7200V_A: number;
  }[];
  test.each(faults.map((it) => [it.kVA, it] as const))("xfmr-2: bolted 240 V fault, %d kVA", (kva, it) => {
    const network = solved({
      s: { kind: "source", at: "p", phases: "A", kvLL: KV, ...STIFF },
      t: {
        kind: "transformer",
        connection: "single",
        secondary: "two-wire",
        from: "p",
        to: "x",
        phases: "A",
        kva,
        primaryKv: 7.2,
        secondaryV: 240,
        rPercent: it.R_percent,
        xPercent: it.X_percent,
        excitingPercent: 0,
      },
      f: { kind: "fault", at: "x", phases: "A", ohms: SOLID_OHMS },
    });
    expectReadings(
      network,
      {
        "f@x/A": [it.I_fault_240V_A, it.angle_deg],
        "t@p/A": [it.I_primary_7200V_A, it.angle_deg],
      },
      { relative: 0.0001, degrees: 0.01 },
    );
  });

  test("gen-1: back-energized from 240 V", () => {
    const wanted = exampleOf("gen-1") as Record<string, number>;
    const volts = (excitingPercent: number, coreKw: number) =>
      magnitude(
        solved(
          {
            // 240 V behind 0.4 + j0.9 Ω: the format's generator has no resistance, so a one-phase source stands in.
            gen: {
              kind: "source",
              at: "x",
              phases: "A",
              kvLL: 0.24 * ROOT3,
              z1Ohms: [0.4, 0.9],
              z0Ohms: [0.4, 0.9],
            },
            t: {
              kind: "transformer",
              connection: "single",
              secondary: "two-wire",
              from: "tap",
              to: "x",
              phases: "A",
              kva: 25,
              primaryKv: 7.2,
              secondaryV: 240,
              rPercent: 1.2,
              xPercent: 1.7,
              excitingPercent,
            },
            core: { kind: "load", at: "tap", phases: "A", kw: coreKw },
          },
          { tap: SOLID_OHMS },
        ),
        "tap/A",
      );
    expectClose(volts(0, 0), wanted["V_primary_ideal"]!, 0.0005);
    expectClose(volts(0.5, 0.075), wanted["V_primary_with_core_current"]!, 0.0005);
  });
});

describe("faults at the end of a 5 mile lateral", () => {
  const wanted = exampleOf("fault-1") as {
    Z1_ohm_per_mile: Complex;
    Z0_ohm_per_mile: Complex;
    sequence_method_A: Record<string, number>;
    phase_matrix_method_A: Record<string, number[]>;
  };
  const lateral: Elements = {
    s: { kind: "source", at: "n1", phases: "ABC", kvLL: 12.47, ...STIFF },
    l: lineOf("n1", "n2", "ABC", 5 * 5280, ieee4.line.four_wire_Z_ohm_per_mile),
  };
  const faulted = (phases: string, to: string) =>
    solved({ ...lateral, f: { kind: "fault", at: "n2", phases, to, ohms: 1e-6 } });
  const within = 0.0005;

  test("fault-1: by phases", () => {
    const { three_phase_abc, line_to_ground_a_b_c, line_to_line_ab_bc_ca } = wanted.phase_matrix_method_A;
    const bolted = faulted("ABC", "earth");
    [..."ABC"].forEach((letter, k) => {
      expectClose(magnitude(bolted, `f@n2/${letter}`), three_phase_abc![k]!, within);
      expectClose(magnitude(faulted(letter, "earth"), `f@n2/${letter}`), line_to_ground_a_b_c![k]!, within);
    });
    ["AB", "BC", "AC"].forEach((pair, k) =>
      expectClose(magnitude(faulted(pair, "phases"), `f@n2/${pair[0]}`), line_to_line_ab_bc_ca![k]!, within),
    );
  });

  test("fault-1: by sequence impedances, as a transposed line", () => {
    const z1 = complex.scale(wanted.Z1_ohm_per_mile, 5);
    const z0 = complex.scale(wanted.Z0_ohm_per_mile, 5);
    const behind = (phases: string, to: string) =>
      solved({
        s: { kind: "source", at: "n2", phases: "ABC", kvLL: 12.47, z1Ohms: z1, z0Ohms: z0 },
        f: { kind: "fault", at: "n2", phases, to, ohms: 1e-6 },
      });
    const { three_phase, line_to_ground, line_to_line } = wanted.sequence_method_A;
    expectClose(magnitude(behind("ABC", "earth"), "f@n2/A"), three_phase!, within);
    expectClose(magnitude(behind("A", "earth"), "f@n2/A"), line_to_ground!, within);
    expectClose(magnitude(behind("AB", "phases"), "f@n2/A"), line_to_line!, within);
  });

  test("fault-2: node 150 of the 123-node feeder", () => {
    const ohms: Complex = complex.add(
      complex.scale([0.7673, 4.7852], (4.16 / 115) ** 2),
      complex.scale([0.01, 0.08], 4.16 ** 2 / 5),
    );
    const network = solved({
      s: { kind: "source", at: "150", phases: "ABC", kvLL: 4.16, z1Ohms: ohms, z0Ohms: ohms },
      f: { kind: "fault", at: "150", phases: "ABC", to: "earth", ohms: 1e-6 },
    });
    expectClose(magnitude(network, "f@150/A"), 8416.0, within);
  });
});

/** Nearly ideal units: leakage far below what is compared, and the exciting branch that decides what floats. */
const idealBank = (connection: string, more: object = {}): SavedKeys => ({
  kind: "transformer",
  connection,
  from: "p1",
  to: "p2",
  phases: "ABC",
  kva: 75,
  primaryKv: KV,
  secondaryV: 240,
  rPercent: 0.001,
  xPercent: 0.001,
  ...more,
});
const opened = (bank: SavedKeys, more: Elements = {}, phases = "ABC", neutral = true): Elements => ({
  s: { kind: "source", at: "p0", phases: "ABC", kvLL: KV, ...STIFF },
  c: { kind: "cutout", from: "p0", to: "p1", phases, open: "A", neutral },
  t: bank,
  ...more,
});
const resistor = (phases: string, kw: number): SavedKeys => ({
  kind: "load",
  at: "p2",
  phases,
  kw,
  connection: phases.length === 2 ? "delta" : "wye",
});
const expectIdeal = (network: Solved, wanted: Record<string, Phasor>, relative = 0.001) =>
  expectReadings(network, wanted, { relative, degrees: 0.1, smallBelow: 2.4, absolute: 0.24 });

describe("an opened phase, by hand", () => {
  const floating = (more: Elements = {}, excitingPercent = 0.5) =>
    solved(opened(idealBank("Y-D", { excitingPercent }), more, "ABC", false));

  test("open-1: floating wye – delta, minus half", () => {
    const wanted = (exampleOf("open-1") as { numbers_7200V_n30: Record<string, Phasor> }).numbers_7200V_n30;
    expectIdeal(floating(), {
      "t*": wanted["V_N"]!,
      "p1/A": wanted["V_A_open"]!,
      "p2/A-p2/B": wanted["V_ab"]!,
      "p2/B-p2/C": wanted["V_bc"]!,
      "p2/C-p2/A": wanted["V_ca"]!,
    });
  });

  test("open-1: floating wye – delta, unequal loads, up to 12 980 V", () => {
    const ab = resistor("AB", 3);
    const bc = resistor("BC", 10);
    const ca = resistor("AC", 2);
    expectIdeal(floating({ ab, bc, ca }, 0), { "p2/A-p2/B": [138.564, -90], "p1/A": [7200, -120] });
    expectIdeal(floating({ bc, ca }, 0), { "p2/A-p2/B": [277.13, -90], "p1/A": [12980, -106.1] });
  });

  test("open-2: grounded wye – delta, the full volts", () => {
    const [volts, degrees] = (exampleOf("open-2") as { numbers_7200V: Phasor }).numbers_7200V;
    expectIdeal(solved(opened(idealBank("Yg-D"))), { "p1/A": [volts, degrees] });
  });

  test("open-3: delta – grounded wye, half", () => {
    const network = solved(opened(idealBank("D-Yg"), {}, "ABC", false), { p2: SOLID_OHMS });
    expectIdeal(network, {
      "p1/A": [3600, 180],
      "p1/A-p1/B": [6235.4, 90],
      "p1/A-p1/C": [6235.4, -90],
      "p2/C": [240 / ROOT3, 90],
      "p2/A": [120 / ROOT3, -90],
      "p2/B": [120 / ROOT3, -90],
    });
  });

  test("open-3: delta – grounded wye, divided by unequal loads", () => {
    // A–C carries 6 kW, B–A 2 kW: the volts divide 1 : 3, the smaller across the heavier load.
    const loads = { a: resistor("A", 6), b: resistor("B", 2) };
    const network = solved(opened(idealBank("D-Yg", { excitingPercent: 0 }), loads, "ABC", false), {
      p2: SOLID_OHMS,
    });
    const acrossBC = 7200 * ROOT3;
    expectIdeal(network, { "p1/A-p1/C": [acrossBC / 4, -90], "p1/A-p1/B": [(acrossBC * 3) / 4, 90] });
  });

  test("open-4: separate grounded units, nothing until a load between phases", () => {
    const bank = idealBank("Yg-Yg", { secondaryV: 240 * ROOT3, excitingPercent: 0.001 });
    const legs = (kw: number) => ({
      ab: resistor("AB", kw),
      bc: resistor("BC", kw),
      ca: resistor("AC", kw),
    });
    const wyeOnly = solved(opened(bank, { g: resistor("ABC", 30) }));
    expectIdeal(wyeOnly, { "p1/A": [0, null], "p2/A": [0, null] }, 0.005);
    expectIdeal(solved(opened(bank, legs(30))), { "p2/A": [120, 180], "p1/A": [3600, 180] }, 0.005);
    // A load of Y_g from a to the neutral beside legs of Y: V_a = Y (V_b + V_c)/(2 Y + Y_g), here with Y_g = 3 Y.
    const beside = solved(opened(bank, { ...legs(30), g: resistor("A", 30) }));
    expectIdeal(beside, { "p2/A": [240 / 5, 180] }, 0.005);
  });

  test("open-5: open wye – open delta, half and reversed", () => {
    const bank = idealBank("openY-openD", { phases: "AB", kva: 50, excitingPercent: 0 });
    const loads = { ab: resistor("AB", 5), bc: resistor("BC", 5), ca: resistor("AC", 5) };
    const network = solved(opened(bank, loads, "AB"));
    expectIdeal(network, { "p2/B-p2/C": [240, -120], "p2/A-p2/B": [120, 60], "p1/A": [3600, 60] }, 0.02);
  });

  test("open-6: a conductor open at both ends beside energized ones", () => {
    const phases = [-4, -1.5, 3].map((x) => ({
      position: inFeet(x, 28),
      radiusM: (0.721 / 2) * 0.0254,
    }));
    const loose = { position: inFeet(0, 24), radiusM: (0.563 / 2) * 0.0254 };
    const farad = capacitanceFaradPerKm([...phases, loose]);
    const volts = [0, -120, 120].map((it) => complex.polar(7200, it));
    const pushed = volts.reduce<Complex>(
      (sum, it, k) => complex.subtract(sum, complex.scale(it, farad[3]![k]!)),
      complex.zero,
    );
    const floatingVolts = complex.scale(pushed, 1 / farad[3]![3]!);
    const amps = complex.times([0, 2 * Math.PI * 60 * MILE_KM], pushed);
    const tolerance = { relative: 0.0002, degrees: 0.05 };
    expect(deviation("V", floatingVolts, [313.35, 179.03], tolerance)).toBeUndefined();
    expectClose(complex.magnitude(amps), 0.00167736, 0.0001);
    // And the capacitances themselves, as the simulator's circuits 19 and 20 have them [F per mile].
    [2.226309561e-9, 2.838131914e-9, 2.8502328e-9].forEach((wanted, k) =>
      expectClose(-farad[3]![k]! * MILE_KM, wanted, 0.0001),
    );
  });
});

describe("smaller things", () => {
  test("cap-1: capacitor current", () => {
    const { I_50kvar_A, I_600kvar_A } = exampleOf("cap-1") as Record<string, number>;
    const network = solved({
      s: { kind: "source", at: "p", phases: "ABC", kvLL: 4.16, ...STIFF },
      one: { kind: "capacitor", at: "p", phases: "A", kvar: 50, kvLL: 4.16 },
      three: { kind: "capacitor", at: "p", phases: "ABC", kvar: 600, kvLL: 4.16 },
    });
    expect(magnitude(network, "one@p/A")).toBeCloseTo(I_50kvar_A!, 2);
    expect(magnitude(network, "three@p/B")).toBeCloseTo(I_600kvar_A!, 2);
    expect(complex.angleDegrees(reading(network, "one@p/A"))).toBeCloseTo(90, 3);
  });

  test("neutral-1: a 120/240 V service with its neutral open", () => {
    const { V1, V2 } = exampleOf("neutral-1") as Record<string, number>;
    const network = solved({
      s: { kind: "source", at: "p", phases: "A", kvLL: KV, ...STIFF },
      t: {
        kind: "transformer",
        connection: "single",
        from: "p",
        to: "x",
        phases: "A",
        kva: 25,
        primaryKv: 7.2,
        secondaryV: 240,
      },
      l: { kind: "lead", from: "x", to: "b", phases: "12", cut: "N" },
      r1: { kind: "load", at: "b", phases: "1", ...powerOf([6, 0], 120) },
      r2: { kind: "load", at: "b", phases: "2", ...powerOf([24, 0], 120) },
    });
    expectClose(magnitude(network, "b/1-b/N"), V1!, 0.005);
    expectClose(magnitude(network, "b/N-b/2"), V2!, 0.005);
  });

  test("delta-1: an ungrounded delta with one phase grounded", () => {
    const wanted = exampleOf("delta-1") as Record<string, number>;
    const network = solved(
      {
        s: { kind: "source", at: "p0", phases: "ABC", kvLL: 4.8, earthed: false, ...STIFF },
        l: { kind: "lead", from: "p0", to: "p1", phases: "ABC", neutral: false },
        c: {
          kind: "capacitor",
          at: "p1",
          phases: "ABC",
          kvLL: 4.8,
          kvar: 2 * Math.PI * 60 * 0.2e-6 * 4800 ** 2 * 1e-3,
        },
        f: { kind: "fault", at: "p1", phases: "A", to: "earth", ohms: 0.001 },
      },
      { p1: SOLID_OHMS },
    );
    const within = 0.0001;
    expectClose(magnitude(network, "p1/B"), wanted["V_sound_phases_to_ground"]!, within);
    expectClose(magnitude(network, "p0/N"), wanted["V_star_point"]!, within);
    expectClose(magnitude(network, "f@p1/A"), wanted["I_fault_A"]!, within);
  });
});
