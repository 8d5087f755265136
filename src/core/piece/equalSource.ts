import type { EqualSource } from "../devices";
import type { StillhotDocument, System } from "../document";
import { type Circuit, circuitOf, groupsAsDrawn, reachOf, REACH, standingOf, UTILITY } from "../network";
import { AS_DRAWN, seenFrom, solutionOf, standingIn } from "../phasor";
import { complex, type Complex, conductorId, type Letter, type PointId } from "../terms";

/** What stands for a part that was cut off, and the rest of what the source's record says. */
export interface FoundSource {
  readonly phases: string;
  readonly kvLL: number;
  readonly angleDeg: number;
  readonly z1Ohms: Complex;
  readonly z0Ohms: Complex;
  readonly equal: EqualSource;
}

/**
 * The part as one source at the point where it was cut off, by Thévenin over all its conductors there, loads as drawn and
 * off. Loads that are no impedances are taken as what they are in the drawing as a whole.
 *
 * @returns nothing where the part may not be taken so: a conductor there is not energized by it, its neutral is not tied
 *     to earth, or its sources do not keep step
 */
export function equalSourceOf(whole: StillhotDocument, part: System, at: PointId): FoundSource | undefined {
  const circuit = circuitOf(part);
  const letters = (["A", "B", "C", "1", "2", "N"] as const).filter((it) =>
    circuit.nodeOf.has(conductorId(at, it)),
  );
  const nodes = letters.map((it) => circuit.nodeOf.get(conductorId(at, it))!);
  if (!holdsAll(circuit, letters, nodes)) return undefined;
  const drawn = seenFrom(standingIn(solutionOf(circuit), solutionOf(circuitOf(whole.system))), nodes);
  const off = seenFrom(solutionOf(circuit, { ...AS_DRAWN, loads: false }), nodes);
  if (drawn === undefined || off === undefined) return undefined;
  const phases = letters.filter((it) => it !== "N").join("");
  return {
    phases,
    kvLL: circuit.nominalVolts[nodes[0]!]! / 1000,
    angleDeg: rounded(angleOfA(letters[0]!, drawn.volts[0]!)),
    ...sequenceOhms(drawn.ohms, phases.length),
    equal: {
      volts: drawn.volts.map(short),
      ohms: drawn.ohms.map((row) => row.map(short)),
      voltsLoadsOff: off.volts.map(short),
      ohmsLoadsOff: off.ohms.map((row) => row.map(short)),
    },
  };
}

/** Whether the part's own sources, which keep step, energize every phase there, and its neutral is tied to earth. */
function holdsAll(circuit: Circuit, letters: readonly Letter[], nodes: readonly number[]): boolean {
  const { how, tied } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  const groups = groupsAsDrawn(circuit).all;
  return (
    letters.some((it) => it !== "N") &&
    groups.length === 1 &&
    groups[0] === UTILITY &&
    letters.every((letter, k) =>
      letter === "N"
        ? tied[nodes[k]!] === 1
        : "ABC".includes(letter) && (how[nodes[k]!]! & REACH.forward) !== 0,
    )
  );
}

/** Angle of phase A by that of another letter, which lags it by 120° for each letter on. */
const angleOfA = (letter: Letter, volts: Complex): number =>
  ((complex.angleDegrees(volts) + 120 * "ABC".indexOf(letter) + 540) % 360) - 180;

/** Positive and zero sequence of a matrix as if it were turned alike for every phase: told beside it, not used. */
function sequenceOhms(ohms: readonly (readonly Complex[])[], count: number) {
  const mean = (entries: readonly Complex[]): Complex =>
    entries.length === 0
      ? complex.zero
      : complex.scale(entries.reduce(complex.add, complex.zero), 1 / entries.length);
  const rows = ohms.slice(0, count).map((row) => row.slice(0, count));
  const own = mean(rows.map((row, k) => row[k]!));
  const mutual = mean(rows.flatMap((row, k) => row.filter((_, other) => other !== k)));
  return {
    z1Ohms: positive(complex.subtract(own, mutual)),
    z0Ohms: positive(complex.add(own, complex.scale(mutual, 2))),
  };
}

const positive = ([re, im]: Complex): Complex => {
  const [r, x] = [Math.max(0, rounded(re)), rounded(im)];
  return r === 0 && x === 0 ? [0, 1e-6] : [r, x];
};

const rounded = (value: number): number => Number(value.toPrecision(6));

/** Twelve digits: far more than anybody measures, and what is left of the others after the solution is rounding. */
const short = ([re, im]: Complex): Complex => [Number(re.toPrecision(12)), Number(im.toPrecision(12))];
