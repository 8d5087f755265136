import { EARTH } from "../network";
import { linearised, worstBetween } from "./angles";
import { Carrier } from "./ldlt";
import type { Solution } from "./solve";

/**
 * Current through a resistance that is put between two nodes: by Thévenin, their volts over that resistance and the
 * impedance seen between them [A]; infinite where the solution may not be believed.
 */
export function ampsThrough(solution: Solution, node: number, other: number, ohms: number): number {
  if (solution.singularAt !== -1) return Infinity;
  if (node === other) return 0;
  const { placeOf } = solution.nodal;
  const carrier = new Carrier(linearised(solution).factor);
  const across = carrier.carry(
    [
      [node, 1],
      [other, -1],
    ].flatMap(([at, sign]) => (at === EARTH ? [] : [[placeOf[at!]!, sign!, 0] as const])),
  );
  const [re, im] = carrier.between(across, across);
  return worstBetween(solution, node, other) / Math.hypot(re + ohms, im);
}
