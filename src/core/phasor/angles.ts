import { perObject } from "../document";
import { EARTH, groupsAsDrawn, type StepGroup } from "../network";
import { type Factor } from "./ldlt";
import { type Assembled, injectInto } from "./nodal";
import { modelsBeyond, type Solution, solveOnce } from "./solve";

/** What one group of sources does by itself, the others' EMFs at zero: volts to earth at each node. */
export interface GroupVolts {
  readonly group: StepGroup;
  readonly voltsRe: Float64Array;
  readonly voltsIm: Float64Array;
}

/**
 * The solution as a sum over the groups of sources that nothing keeps in step, each solved with the impedances of the
 * solution as drawn: loads that are no impedances as what they then are.
 */
export const voltsByGroup: (solution: Solution) => readonly GroupVolts[] = perObject((solution: Solution) => {
  const { nodal } = solution;
  const { all } = groupsAsDrawn(nodal.circuit);
  if (all.length < 2)
    return all.map((group) => ({ group, voltsRe: solution.voltsRe, voltsIm: solution.voltsIm }));
  const { assembled, factor } = linearised(solution);
  return all.map((group) => {
    const re = new Float64Array(nodal.size);
    const im = new Float64Array(nodal.size);
    injectInto(nodal, solution.variant, re, im, group);
    const { xRe, xIm } = solveOnce(nodal, assembled, factor, re, im);
    const { nodeCount } = nodal.circuit;
    const voltsRe = new Float64Array(nodeCount);
    const voltsIm = new Float64Array(nodeCount);
    for (let node = 0; node < nodeCount; node++) {
      voltsRe[node] = xRe[nodal.placeOf[node]!]!;
      voltsIm[node] = xIm[nodal.placeOf[node]!]!;
    }
    return { group, voltsRe, voltsIm };
  });
});

/** The equations of a solution with every load as the impedance that it is there, and their factors. */
export const linearised: (solution: Solution) => { readonly assembled: Assembled; readonly factor: Factor } =
  perObject((solution: Solution) => {
    const { nodal, assembled, factor, extraAmps } = solution;
    if (extraAmps.size === 0) return { assembled, factor };
    const re = assembled.re.slice();
    const im = assembled.im.slice();
    for (const [branch, [more, moreIm]] of modelsBeyond(solution)) {
      const [own, between, other] = nodal.branches[branch]!.slots;
      for (const [slot, sign] of [
        [own!, 1],
        [between!, -1],
        [other!, 1],
      ] as const) {
        if (slot === -1) continue;
        re[slot]! += sign * more;
        im[slot]! += sign * moreIm;
      }
    }
    return { assembled: { ...assembled, re, im }, factor: nodal.factorizer.factor(re, im) };
  });

/** Volts to earth at a node, the worst over angles that nothing fixes [V]; of a solution that may not be believed, infinite. */
export const worstAt = (solution: Solution, node: number): number => worstBetween(solution, node, EARTH);

/** The same between two nodes: the sum of what each group of sources brings about [V]. */
export function worstBetween(solution: Solution, node: number, other: number): number {
  if (solution.singularAt !== -1) return Infinity;
  let sum = 0;
  for (const { voltsRe, voltsIm } of voltsByGroup(solution)) {
    const re = (node === EARTH ? 0 : voltsRe[node]!) - (other === EARTH ? 0 : voltsRe[other]!);
    const im = (node === EARTH ? 0 : voltsIm[node]!) - (other === EARTH ? 0 : voltsIm[other]!);
    sum += Math.hypot(re, im);
  }
  return sum;
}
