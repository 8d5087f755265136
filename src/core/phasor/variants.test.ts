/** Loads off, grounds lifted, faults gone: which of these a drawing can differ in, and what it does to the volts. */
import { describe, expect, test } from "vitest";
import { circuitOf } from "../network";
import { complex } from "../terms";
import { AS_DRAWN, solutionOf, type Variant, voltsAt } from ".";
import { type Elements, systemOf } from "../../../tests/published/network";

/** 12.47 kV between phases, to the neutral [V]. */
const TO_NEUTRAL = 12470 / Math.sqrt(3);

const LINE: Elements = {
  s: { kind: "source", at: "a", phases: "A", kvLL: 12.47, z1Ohms: [0, 3], z0Ohms: [0, 3] },
  d: { kind: "disconnect", from: "a", to: "b", phases: "A" },
};
const WITHOUT = {
  "without loads": { ...AS_DRAWN, loads: false },
  "without grounds": { ...AS_DRAWN, grounds: false },
  "without faults": { ...AS_DRAWN, faults: false },
} as const satisfies Record<string, Variant>;
type Without = keyof typeof WITHOUT;

/** What a cut-off part beyond the source held there with its loads on, and with them off [V]. */
const EQUAL = {
  kind: "source",
  at: "a",
  phases: "A",
  kvLL: 12.47,
  equal: { volts: [[7000, 0]], ohms: [[[0, 3]]], voltsLoadsOff: [[7150, 0]], ohmsLoadsOff: [[[0, 3]]] },
};

const voltsOf = (elements: Elements, variant: Variant) => {
  const circuit = circuitOf(systemOf(elements));
  return complex.magnitude(voltsAt(solutionOf(circuit, variant), circuit.nodeOf.get("b/A")!));
};

describe("What is drawn decides which variants there are", () => {
  test.each<[string, Elements, Without | undefined]>([
    ["a line alone", {}, undefined],
    ["a capacitor", { c: { kind: "capacitor", at: "b", phases: "A", kvar: 100, kvLL: 12.47 } }, undefined],
    ["a load", { l: { kind: "load", at: "b", phases: "A", kw: 1000 } }, "without loads"],
    ["a ground set", { g: { kind: "ground", at: "b", phases: "A" } }, "without grounds"],
    ["a fault", { f: { kind: "fault", at: "b", phases: "A" } }, "without faults"],
    ["a source that stands for a part with loads", { s: EQUAL }, "without loads"],
    [
      "one of two sources that does so",
      { s: EQUAL, s2: { kind: "source", at: "x", phases: "A", kvLL: 12.47 } },
      "without loads",
    ],
  ])("%s", (_why, more, differing) => {
    const circuit = circuitOf(systemOf({ ...LINE, ...more }));
    const asDrawn = solutionOf(circuit);
    for (const [name, variant] of Object.entries(WITHOUT))
      expect(solutionOf(circuit, variant) === asDrawn, name).toBe(name !== differing);
  });
});

test.each<[string, Elements, Without, number, number]>([
  // 1 MW at 7.2 kV is 51.8 Ω, behind j3 Ω.
  [
    "a load pulls the volts down",
    { l: { kind: "load", at: "b", phases: "A", kw: 1000 } },
    "without loads",
    (TO_NEUTRAL * 51.83) / Math.hypot(51.83, 3),
    TO_NEUTRAL,
  ],
  [
    "a bolted fault takes all of them",
    { f: { kind: "fault", at: "b", phases: "A" } },
    "without faults",
    0,
    TO_NEUTRAL,
  ],
  ["an equal source without its loads", { s: EQUAL }, "without loads", 7000, 7150],
])("%s", (_why, more, without, asDrawn, otherwise) => {
  const elements = { ...LINE, ...more };
  expect(Math.abs(voltsOf(elements, AS_DRAWN) - asDrawn)).toBeLessThan(0.01 * TO_NEUTRAL);
  expect(voltsOf(elements, AS_DRAWN)).toBeLessThan(voltsOf(elements, WITHOUT[without]));
  expect(Math.abs(voltsOf(elements, WITHOUT[without]) - otherwise)).toBeLessThan(0.001 * TO_NEUTRAL);
});

// A ground set has the impedance of its cable: milliohms beside the source's three ohms.
test("a ground set holds its conductor, and lifted it holds nothing", () => {
  const elements = { ...LINE, g: { kind: "ground", at: "b", phases: "A" } };
  expect(voltsOf(elements, AS_DRAWN)).toBeLessThan(0.05 * TO_NEUTRAL);
  expect(voltsOf(elements, WITHOUT["without grounds"])).toBeCloseTo(TO_NEUTRAL, 0);
});

describe("What no line can carry", () => {
  const behind = (ohms: number, more: Elements) =>
    circuitOf(
      systemOf({
        s: { kind: "source", at: "a", phases: "A", kvLL: 12.47, z1Ohms: [0, ohms], z0Ohms: [0, ohms] },
        ...more,
      }),
    );
  const machine = (kw: number, more: object) => ({
    g: { kind: "generator", at: "a", phases: "A", kva: 2 * kw, volts: 7200, on: true, ...more },
  });
  const load = (kw: number, model: string) => ({ l: { kind: "load", at: "a", phases: "A", kw, model } });
  const voltsAtIt = (circuit: ReturnType<typeof behind>) =>
    complex.magnitude(voltsAt(solutionOf(circuit), circuit.nodeOf.get("a/A")!));

  test.each([
    // So much goes through j10 Ω, by E²/2X at most 2.6 MW; the machine's own volts stay out of it.
    ["a machine's output that goes through", 10, machine(600, { outputKw: 600 }), true, undefined],
    ["one that nothing settles", 10, machine(2000, { outputKw: 2000 }), false, true],
    ["a load that settles", 10, load(600, "PQ"), true, undefined],
    ["one that does not", 100, load(600, "PQ"), false, undefined],
  ] as const)("%s", (_why, ohms, more, settled, outputsHold) => {
    const solution = solutionOf(behind(ohms, more));
    expect(solution.settled).toBe(settled);
    expect(solution.variant.outputsHold).toBe(outputsHold);
  });

  // docs/format.md: outputs that do not settle count as volts behind `xPercent`, loads as impedances.
  test("a machine's then holds its volts, as one with no set output", () =>
    expect(voltsAtIt(behind(10, machine(2000, { outputKw: 2000 })))).toBeCloseTo(
      voltsAtIt(behind(10, machine(2000, {}))),
      6,
    ));

  test("a load's is the impedance of its rating", () =>
    expect(voltsAtIt(behind(100, load(600, "PQ")))).toBeCloseTo(voltsAtIt(behind(100, load(600, "Z"))), 6));
});
