import { complex, type Complex, lettersOf, type Phase, say } from "../terms";
import {
  amount,
  equalSource,
  type EqualSource,
  flag,
  impedance,
  neededAmount,
  pointRef,
  text,
  choice,
  letters,
} from "./fields";
import { elementFields, defineDevice, EVIDENCE, problem } from "./define";
import { normalAngleDegrees, offBy } from "./shared";
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

/** A source's own volts, or those of a part that was cut off: then its neutral is one of the conductors that it holds. */
function suppliedBy({ phases, kvLL, angleDeg, z1Ohms, z0Ohms, on, earthed, equal }: Rated): Part[] {
  const emf = { part: "emf", role: "utility", on } as const;
  const letters = lettersOf(phases) as readonly Phase[];
  if (equal === undefined)
    return [
      {
        ...emf,
        legs: letters.map((letter) => ({
          node: `at/${letter}`,
          letter,
          volts: complex.polar((kvLL * 1000) / Math.sqrt(3), angleDeg + normalAngleDegrees(letter)),
        })),
        star: "at/N",
        inStep: "system",
        ohms: phaseImpedances(phases.length, z1Ohms, z0Ohms),
      },
      ...(earthed ? [NEUTRAL_TO_EARTH] : []),
    ];
  const held = holdsNeutral({ phases, equal }) ? ([...letters, "N"] as const) : letters;
  return [
    {
      ...emf,
      legs: held.map((letter, row) => ({ node: `at/${letter}`, letter, volts: equal.volts[row]! })),
      star: "earth",
      inStep: "system",
      ohms: equal.ohms,
      unloaded: { volts: equal.voltsLoadsOff, ohms: equal.ohmsLoadsOff },
    },
    // Switched off, what was cut off still ties its neutral to earth.
    ...(held.length > letters.length ? [{ ...NEUTRAL_TO_EARTH, closed: !on }] : []),
  ];
}

interface Rated {
  readonly phases: string;
  readonly kvLL: number;
  readonly angleDeg: number;
  readonly z1Ohms: Complex;
  readonly z0Ohms: Complex;
  readonly on: boolean;
  readonly earthed: boolean;
  readonly equal: EqualSource | undefined;
}

const NEUTRAL_TO_EARTH = { part: "join", from: "at/N", to: "earth", letter: "N", closed: true } as const;

const holdsNeutral = ({ phases, equal }: Pick<Rated, "phases" | "equal">): boolean =>
  equal === undefined || equal.volts.length > phases.length;

/** The utility's supply: volts behind impedance, its neutral earthed solidly unless it says otherwise. */
export const source = defineDevice({
  kind: "source",
  role: "supply",
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
    /** what it is seen from here, by Thévenin over all conductors, where it stands for a part that was cut off */
    equal: equalSource(),
  },
  check: ({ phases, equal }) =>
    equal === undefined || [0, 1].includes(equal.volts.length - phases.length)
      ? []
      : [problem("equal", say("read.equalSize", { size: phases.length }))],
  couldFeed: () => true,
  brings: (it) =>
    [...lettersOf(it.phases), ...(holdsNeutral(it) ? ["N" as const] : [])].map(
      (letter) => ["at", letter] as const,
    ),
  parts: (it): Part[] =>
    suppliedBy(it).map((part) =>
      part.part === "emf" ? { ...part, inStep: it.inStep ? "system" : "never" } : part,
    ),
  upsets: (it) => (it.on ? [] : [{ kind: "restore", strength: 1, change: { on: true } }]),
  // The system behind it is switched and loaded otherwise from hour to hour; common practice, no source. Volts: ANSI C84.1,
  // range A at medium voltage (from memory). What stands for a part that was cut off has neither.
  numbers: ({ kvLL, z1Ohms, z0Ohms, equal }) =>
    equal === undefined ? [...offBy({ kvLL }, 0.975, 1.05), ...offBy({ z1Ohms, z0Ohms }, 0.5, 2)] : [],
  doubts: ({ on }) => (on ? [] : [{ doubt: "other-position", instead: { on: true } }]),
  rating: (it) => say(it.on ? "drawing.sourceRating" : "drawing.sourceOff", { kv: it.kvLL }),
  symbolReach: 17,
  hangsToward: 180,
  symbol: ({ on }) => [
    circle(0, 0, 17),
    on
      ? { ...line(-10, 0, -8, -5, -5, -7, -2, -5, 2, 5, 5, 7, 8, 5, 10, 0), upright: true }
      : inscribed(0, 0, "off"),
  ],
});
