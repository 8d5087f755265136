import { complex, type Complex, lettersOf, type Letter, type Phase, say } from "../terms";
import { amount, choice, flag, neededAmount, optionalAmount } from "./fields";
import { defineDevice, oneEnd } from "./define";
import type { Branch, DevicePlace, Emf, Node, Part } from "./parts";
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

interface SetOutput extends Machine {
  readonly outputKw: number | undefined;
  readonly outputKvar: number;
  readonly withoutGrid: "stops" | "carries-on";
}

/**
 * A machine at a set output feeds in so many watts and vars whatever the volts are, and holds none itself: constant power,
 * shared evenly by its legs, with no more than 1.4 times its amperes where the volts are gone (the floor of all that draws
 * constant power). Source: a solar or battery inverter follows the grid's volts as a current source (IEEE 1547-2018, 3.1 and
 * 8.1, from memory); what is set at it is a constant power in every study of load flow.
 */
function setOutput(it: SetOutput, place: DevicePlace): Part[] {
  const emf = machineEmf(it, place);
  if (it.outputKw === undefined) return [emf];
  const va: Complex = [(-it.outputKw * 1000) / emf.legs.length, (-it.outputKvar * 1000) / emf.legs.length];
  return [
    { ...emf, withoutGrid: it.withoutGrid },
    ...emf.legs.map(({ node, letter, volts: rated }): Branch => {
      const volts = complex.magnitude(rated);
      return {
        part: "branch",
        role: "output",
        from: node,
        to: emf.star,
        letter,
        siemens: [va[0] / (volts * volts), -va[1] / (volts * volts)],
        demand: { va, volts, model: "PQ" },
      };
    }),
  ];
}

/** Whether it stops by itself where nothing else holds the volts; a machine with volts of its own does not. */
const stopsByItself = ({ outputKw, withoutGrid }: SetOutput): boolean =>
  outputKw !== undefined && withoutGrid === "stops";

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
    /** what it is set to feed in; without it the machine holds volts of its own */
    outputKw: optionalAmount("kW", { min: -1e6, max: 1e6 }),
    outputKvar: amount("kvar", 0, { min: -1e6, max: 1e6 }),
    /** what a machine at a set output does where nothing else holds the volts */
    withoutGrid: choice(["stops", "carries-on"], "stops"),
  },
  couldFeed: () => true,
  brings: bringsNeutral,
  needs: needsItsPhases,
  parts: setOutput,
  // One that has to stop without the grid may fail to, as one that is off may start.
  upsets: (it) =>
    it.on && !stopsByItself(it)
      ? []
      : [
          {
            kind: "start",
            strength: 1,
            change: { on: true, ...(stopsByItself(it) ? { withoutGrid: "carries-on" } : {}) },
          },
        ],
  doubts: (it) => [
    {
      doubt: "machine",
      instead: {
        on: true,
        kva: BIGGER * it.kva,
        ...(stopsByItself(it) ? { withoutGrid: "carries-on" } : {}),
      },
    },
  ],
  // The sun and a battery give anything from nothing to the whole of the rating.
  numbers: ({ kva, outputKw }) => [
    ...offBy({ kva }, 0.5, BIGGER),
    ...(outputKw === undefined
      ? []
      : [{ low: { outputKw: 0, outputKvar: 0 }, high: { outputKw: kva, outputKvar: 0 } }]),
  ],
  handling: { off: "stop", on: "start", moves: "machine", tools: [], trouble: 4, canGoOff: ({ on }) => on },
  rating: ({ kva, on, outputKw }) =>
    outputKw !== undefined && on
      ? say("drawing.generatorFeeding", { kva, kw: outputKw })
      : say(on ? "drawing.generatorOn" : "drawing.generatorOff", { kva }),
  symbolReach: 15,
  hangsToward: -45,
  ratingWidth: 84,
  symbol: ({ on }) => [circle(0, 0, 15), inscribed(0, 0, on ? "G" : "G0")],
});
