import { type Circuit, EARTH } from "../network";
import { complex, type Complex, conductorId, type Letter, type PointId } from "../terms";
import { Carrier } from "./ldlt";
import { invert, times } from "./matrix";
import { type Solution, solutionOf, voltsAt } from "./solve";

/** Bolted fault currents at a point, whatever the point has; the largest current in any faulted phase [A]. */
export interface FaultAmps {
  /** all phases to each other and to the neutral, or to earth where the point has none; undefined with fewer than three */
  readonly threePhase?: number;
  /** the largest of two phases to each other */
  readonly phaseToPhase?: number;
  /** the largest of one phase to the neutral, or to earth where the point has none */
  readonly phaseToGround?: number;
}

/**
 * Fault currents at a point by Thévenin: volts before the fault, and the impedance seen from its conductors, found from
 * the factors by uᵀ A⁻¹ v. The network is as drawn, loads off and temporary grounds and faults lifted, so that nothing
 * shares the current.
 *
 * Source: the superposition theorem; checked against Kersting's fault study in `tests/published/ieee37.test.ts`
 */
export function faultAmpsAt(circuit: Circuit, point: PointId): FaultAmps {
  const solution = solutionOf(circuit, { loads: false, grounds: false, faults: false });
  const node = (letter: Letter) => circuit.nodeOf.get(conductorId(point, letter));
  const phases = (["A", "B", "C", "1", "2"] as const).flatMap((letter) => node(letter) ?? []);
  const ground = node("N") ?? EARTH;
  const most = (loops: readonly Loop[][]): number =>
    Math.max(...loops.map((faulted) => Math.max(...loopAmps(solution, faulted))));
  const between = phases.flatMap((a, i) => phases.slice(i + 1).map((b): Loop[] => [{ plus: a, minus: b }]));
  return {
    ...(phases.length === 0
      ? {}
      : { phaseToGround: most(phases.map((it) => [{ plus: it, minus: ground }])) }),
    ...(between.length === 0 ? {} : { phaseToPhase: most(between) }),
    ...(phases.length < 3 ? {} : { threePhase: most([phases.map((it) => ({ plus: it, minus: ground }))]) }),
  };
}

/** A loop that a fault closes, from one node to another. */
interface Loop {
  readonly plus: number;
  readonly minus: number;
}

/** Magnitudes of the currents in loops that close together. */
function loopAmps(solution: Solution, loops: readonly Loop[]): number[] {
  const carrier = new Carrier(solution.factor);
  const { placeOf } = solution.nodal;
  const carried = loops.map(({ plus, minus }) =>
    carrier.carry(
      [
        [plus, 1],
        [minus, -1],
      ]
        .filter(([node]) => node !== EARTH)
        .map(([node, sign]) => [placeOf[node!]!, sign!, 0] as const),
    ),
  );
  const ohms = carried.map((u) => carried.map((v): Complex => carrier.between(u, v)));
  const volts = loops.map(({ plus, minus }) =>
    complex.subtract(voltsAt(solution, plus), voltsAt(solution, minus)),
  );
  return times(invert(ohms), volts).map(complex.magnitude);
}
