import { type Circuit, EARTH } from "../network";
import { complex, type Complex, type Letter } from "../terms";
import { emfIn, holdsVolts, isPresent, joinTerms } from "./nodal";
import { type Solution, voltsAt } from "./solve";
import { times } from "./matrix";

/** Currents that each element takes from its nodes: `amps[element]` maps node to the current from it into the element. */
export type ElementAmps = readonly ReadonlyMap<number, Complex>[];

/** What every element takes from every node that it touches, from one solution [A]. */
export function elementAmps(solution: Solution): ElementAmps {
  const { nodal, variant } = solution;
  const { circuit } = nodal;
  const amps: Map<number, Complex>[] = circuit.elementIds.map(() => new Map());
  const take = (element: number, node: number, current: Complex) => {
    if (node === EARTH) return;
    const known = amps[element]!;
    known.set(node, complex.add(known.get(node) ?? complex.zero, current));
  };
  const { joins } = circuit;
  for (let k = 0; k < joins.count; k++) {
    const current: Complex =
      joins.closed[k] === 1 ? [solution.joinRe[k]!, solution.joinIm[k]!] : complex.zero;
    for (const { node, coefficient } of joinTerms(circuit, k))
      take(joins.element[k]!, node, complex.scale(current, coefficient));
  }
  nodal.stretches.forEach(({ electrical }, index) => {
    const { element, from, to } = circuit.stretches[index]!;
    const near = from.map((node) => voltsAt(solution, node));
    const far = to.map((node) => voltsAt(solution, node));
    const across = near.map((volts, i) =>
      complex.subtract(complex.subtract(volts, far[i]!), electrical.inducedVolts[i]!),
    );
    const along = times(electrical.seriesSiemens, across);
    const shunt = (volts: readonly Complex[], i: number): Complex =>
      electrical.halfShuntSiemens[i]!.reduce<Complex>(
        (sum, b, j) => complex.add(sum, complex.times([0, b], volts[j]!)),
        complex.zero,
      );
    const { letters, rodSiemens } = circuit.stretches[index]!.part;
    const intoRods = (volts: readonly Complex[], i: number): Complex =>
      letters[i] === "N" ? complex.scale(volts[i]!, rodSiemens) : complex.zero;
    const charging = (volts: readonly Complex[], i: number): Complex =>
      complex.add(complex.subtract(shunt(volts, i), electrical.pushedAmps[i]!), intoRods(volts, i));
    from.forEach((node, i) => take(element, node, complex.add(along[i]!, charging(near, i))));
    to.forEach((node, i) => take(element, node, complex.subtract(charging(far, i), along[i]!)));
  });
  const takeStamp = (element: number, nodes: readonly number[], siemens: readonly (readonly Complex[])[]) =>
    times(
      siemens,
      nodes.map((node) => voltsAt(solution, node)),
    ).forEach((current, i) => take(element, nodes[i]!, current));
  nodal.units.forEach(({ stamp, siemens }, index) =>
    takeStamp(circuit.units[index]!.element, stamp.nodes, siemens),
  );
  circuit.branches.forEach(({ element, part, from, to }, branch) => {
    const volts = complex.subtract(voltsAt(solution, from), voltsAt(solution, to));
    const drawn = complex.add(
      complex.times(part.siemens, volts),
      solution.extraAmps.get(branch) ?? complex.zero,
    );
    const current = isPresent(circuit, branch, variant) ? drawn : complex.zero;
    take(element, from, current);
    take(element, to, complex.scale(current, -1));
  });
  circuit.emfs.forEach(({ element }, index) => {
    const { stamp } = nodal.emfs[index]!;
    if (!holdsVolts(circuit, index, variant)) {
      stamp.nodes.forEach((node) => take(element, node, complex.zero));
      return;
    }
    const { siemens, injected } = emfIn(nodal.emfs[index]!, variant);
    takeStamp(element, stamp.nodes, siemens);
    stamp.nodes.forEach((node, i) => take(element, node, complex.scale(injected[i]!, -1)));
  });
  return amps;
}

/** The currents at one point of an element, by letter. */
export function ampsAtPoint(
  circuit: Circuit,
  amps: ElementAmps,
  element: number,
  point: number,
): Partial<Record<Letter, Complex>> {
  const byLetter: Partial<Record<Letter, Complex>> = {};
  for (const [node, current] of amps[element]!)
    if (circuit.pointOfNode[node] === point) byLetter[circuit.letterOfNode[node] as Letter] = current;
  return byLetter;
}
