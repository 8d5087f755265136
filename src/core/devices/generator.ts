import { complex, type Complex, lettersOf, type Letter, type Phase, say } from "../terms";
import { amount, choice, flag, neededAmount } from "./fields";
import { defineDevice, oneEnd } from "./define";
import type { DevicePlace, Emf, Node } from "./parts";
import { isSplit, needsItsPhases, normalAngleDegrees, offBy, voltsToNeutral } from "./shared";
import { circle, inscribed } from "./symbol";

interface Machine {
  readonly phases: string;
  readonly kva: number;
  /** line to line, or leg to leg */
  readonly volts: number;
  readonly xPercent: number;
  readonly on: boolean;
}

/**
 * Volts behind a reactance on the machine's own rating, per phase: x% of V²/S on three phases, of (V/√3)²/S on one
 * letter, half of V²/S on each leg of a split secondary, the whole of it between two letters. Each letter's EMF is at that
 * letter's own angle, and between two letters at that of their difference.
 * Source: the file format's own definition; a reactance in percent of the machine's base is the usual one.
 */
export function machineEmf({ phases, kva, volts, xPercent, on }: Machine, place: DevicePlace): Emf {
  const va = kva * 1000;
  const own = lettersOf(phases);
  const star: Node = place.hasNeutral("at") ? "at/N" : "inner/star";
  const wholeOhms = ((xPercent / 100) * volts * volts) / va;
  if (own.length === 2 && !isSplit(phases))
    return {
      part: "emf",
      role: "generator",
      on,
      legs: [{ node: `at/${own[0]!}`, letter: own[0]!, volts: complex.polar(volts, betweenDegrees(own)) }],
      star: `at/${own[1]!}`,
      inStep: "when-joined",
      ohms: [[[0, wholeOhms]]],
    };
  const legOhms = isSplit(phases) ? wholeOhms / 2 : own.length === 3 ? wholeOhms : wholeOhms / 3;
  return {
    part: "emf",
    role: "generator",
    on,
    legs: own.map((letter) => ({
      node: `at/${letter}`,
      letter,
      volts: complex.polar(voltsToNeutral(phases, volts), normalAngleDegrees(letter)),
    })),
    star,
    inStep: "when-joined",
    ohms: own.map((_, row) => own.map((_, column): Complex => (row === column ? [0, legOhms] : [0, 0]))),
  };
}

/** Angle of the difference between two letters. */
function betweenDegrees([one, other]: readonly Phase[]): number {
  const [a, b] = [complex.polar(1, normalAngleDegrees(one!)), complex.polar(1, normalAngleDegrees(other!))];
  return complex.angleDegrees(complex.subtract(a, b));
}

/** A star brings the neutral of its point; one winding between two letters knows none. */
const bringsNeutral = ({ phases }: { phases: string }) =>
  phases.length === 2 && !isSplit(phases) ? [] : [["at" as const, "N" as Letter] as const];

/** So many times its drawn size a machine may be that was changed since it was drawn; common practice, no source. */
const BIGGER = 2;

/** A customer's or a crew's generator, off unless it says so. */
export const generator = defineDevice({
  kind: "generator",
  role: "machine",
  prefix: "gen",
  startsWith: { kva: 7.5, volts: 240 },
  ends: ["at"],
  fields: {
    ...oneEnd,
    kva: neededAmount("kVA"),
    volts: neededAmount("V"),
    on: flag(false),
    xPercent: amount("%", 20, { above: 0 }),
    interface: choice(["direct", "inverter"], "direct"),
  },
  couldFeed: () => true,
  brings: bringsNeutral,
  needs: needsItsPhases,
  parts: (it, place) => [machineEmf(it, place)],
  upsets: (it) => (it.on ? [] : [{ kind: "start", strength: 1, change: { on: true } }]),
  doubts: ({ kva }) => [{ doubt: "machine", instead: { on: true, kva: BIGGER * kva } }],
  numbers: ({ kva }) => offBy({ kva }, 0.5, BIGGER),
  handling: { off: "stop", on: "start", moves: "machine", tools: [], trouble: 4, canGoOff: ({ on }) => on },
  rating: ({ kva, on }) => say(on ? "drawing.generatorOn" : "drawing.generatorOff", { kva }),
  symbolReach: 15,
  hangsToward: -45,
  ratingWidth: 84,
  symbol: ({ on }) => [circle(0, 0, 15), inscribed(0, 0, on ? "G" : "G0")],
});
