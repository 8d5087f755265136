import { complex, type Complex, lettersOf, say } from "../terms";
import { amount, flag, impedance, neededAmount, pointRef, text, choice, letters } from "./fields";
import { elementFields, defineDevice, EVIDENCE } from "./define";
import { normalAngleDegrees } from "./shared";
import type { Part } from "./parts";
import { circle, inscribed, line } from "./symbol";

/**
 * Phase impedances of a source from its sequence impedances: (z0 + 2 z1)/3 on the diagonal, (z0 − z1)/3 off it [Ω].
 * Source: symmetrical components with z1 = z2 (Fortescue 1918).
 */
function phaseImpedances(count: number, z1Ohms: Complex, z0Ohms: Complex): Complex[][] {
  const own = complex.scale(complex.add(z0Ohms, complex.scale(z1Ohms, 2)), 1 / 3);
  const mutual = complex.scale(complex.subtract(z0Ohms, z1Ohms), 1 / 3);
  return Array.from({ length: count }, (_, row) =>
    Array.from({ length: count }, (_, column) => (row === column ? own : mutual)),
  );
}

/** The utility's supply: volts behind impedance, its neutral earthed solidly unless it says otherwise. */
export const source = defineDevice({
  kind: "source",
  prefix: "s",
  startsWith: { kvLL: 12.47 },
  ends: ["at"],
  fields: {
    label: text(),
    phases: letters("ABC"),
    evidence: choice(EVIDENCE, "map"),
    ...elementFields,
    at: pointRef(),
    kvLL: neededAmount("kV", { above: 0, max: 1000 }),
    z1Ohms: impedance([0.05, 0.5]),
    z0Ohms: impedance([0.05, 0.5]),
    angleDeg: amount("°", 0, { min: -360, max: 360 }),
    on: flag(true),
    earthed: flag(true),
    /** fed from one transmission system with the others that say so, and at one angle with them */
    inStep: flag(true),
  },
  brings: ({ phases }) => [...lettersOf(phases), "N" as const].map((letter) => ["at", letter] as const),
  parts: ({ phases, kvLL, angleDeg, z1Ohms, z0Ohms, on, earthed, inStep }): Part[] => [
    {
      part: "emf",
      role: "utility",
      on,
      legs: lettersOf(phases).map((letter) => ({
        node: `at/${letter}`,
        letter,
        volts: complex.polar((kvLL * 1000) / Math.sqrt(3), angleDeg + normalAngleDegrees(letter)),
      })),
      star: "at/N",
      inStep: inStep ? "system" : "never",
      ohms: phaseImpedances(phases.length, z1Ohms, z0Ohms),
    },
    ...(earthed ? [{ part: "join", from: "at/N", to: "earth", letter: "N", closed: true } as const] : []),
  ],
  upsets: (it) => (it.on ? [] : [{ kind: "restore", strength: 1, change: { on: true } }]),
  rating: (it) => say(it.on ? "drawing.sourceRating" : "drawing.sourceOff", { kv: it.kvLL }),
  symbolReach: 17,
  symbol: ({ on }) => [
    circle(0, 0, 17),
    on
      ? { ...line(-10, 0, -8, -5, -5, -7, -2, -5, 2, 5, 5, 7, 8, 5, 10, 0), upright: true }
      : inscribed(0, 0, "off"),
  ],
});
