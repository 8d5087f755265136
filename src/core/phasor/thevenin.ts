import { EARTH } from "../network";
import { complex, type Complex } from "../terms";
import { linearised } from "./angles";
import { Carrier } from "./ldlt";
import { injectInto } from "./nodal";
import { type Solution, solveOnce } from "./solve";

/** A network as it is seen from some of its nodes: volts to earth with nothing drawn there, and the impedances behind them. */
export interface SeenFrom {
  readonly volts: readonly Complex[];
  readonly ohms: readonly (readonly Complex[])[];
}

/**
 * Thévenin's equivalent of a solved network over several nodes at once; its loads as the impedances that they are in the
 * solution. Nothing where the equations were singular.
 */
export function seenFrom(solution: Solution, nodes: readonly number[]): SeenFrom | undefined {
  const { assembled, factor } = linearised(solution);
  if (factor.singularAt !== -1) return undefined;
  const { nodal, variant } = solution;
  const { placeOf, size } = nodal;
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  injectInto(nodal, variant, re, im);
  const { xRe, xIm } = solveOnce(nodal, assembled, factor, re, im);
  const carrier = new Carrier(factor);
  const carried = nodes.map((node) => carrier.carry([[placeOf[node]!, 1, 0]]));
  return {
    volts: nodes.map((node): Complex => [xRe[placeOf[node]!]!, xIm[placeOf[node]!]!]),
    ohms: carried.map((u) => carried.map((v): Complex => carrier.between(u, v))),
  };
}

/**
 * The solution of a part with every load at the volts and amperes that it has in the whole that the part is of, so that
 * what a part is replaced by is right where the whole stands.
 */
export function standingIn(part: Solution, whole: Solution): Solution {
  const [own, all] = [part.nodal.circuit, whole.nodal.circuit];
  if (whole.extraAmps.size === 0) return { ...part, extraAmps: new Map() };
  const voltsRe = part.voltsRe.slice();
  const voltsIm = part.voltsIm.slice();
  own.conductorIds.forEach((id, node) => {
    const there = all.nodeOf.get(id)!;
    voltsRe[node] = whole.voltsRe[there]!;
    voltsIm[node] = whole.voltsIm[there]!;
  });
  const branchesOf = ({ branches, elementIds }: typeof own) => {
    const by = new Map<string, number[]>();
    branches.forEach(({ element }, branch) => {
      const id = elementIds[element]!;
      const known = by.get(id);
      if (known === undefined) by.set(id, [branch]);
      else known.push(branch);
    });
    return by;
  };
  const there = branchesOf(all);
  const extraAmps = new Map<number, Complex>();
  for (const [id, branches] of branchesOf(own))
    branches.forEach((branch, nth) => {
      const amps = whole.extraAmps.get(there.get(id)![nth]!);
      const { from, to } = own.branches[branch]!;
      const isBetweenConductors = [from, to].every((it) => it === EARTH || it < own.conductorCount);
      if (amps !== undefined && isBetweenConductors && complex.magnitude(amps) > 0)
        extraAmps.set(branch, amps);
    });
  return { ...part, voltsRe, voltsIm, extraAmps };
}
