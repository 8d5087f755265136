import { perObject } from "../document";
import type { Circuit } from "./circuit";
import { FewIslands } from "./islands";
import { isPhase, phaseIslands } from "./phaseIslands";
import { standingOf } from "./running";

/** The group of all that is in step with the utility; any other group is one element alone, by its index. */
export const UTILITY = -1;

/** Sources that keep step with each other: `UTILITY`, or the index of the one element that nothing keeps in step. */
export type StepGroup = number;

/**
 * Which group each of some supplies is in. A machine is in step with the utility where a phase of both is joined; nothing
 * else is: not two machines, not another circuit, not a source that says so, joined or not.
 *
 * @param emfs    supplies that are on
 * @param links   nodes that are joined beside those that are as drawn
 */
export function stepGroups(
  circuit: Circuit,
  emfs: readonly number[],
  links: readonly (readonly [number, number])[] = [],
): ReadonlyMap<number, StepGroup> {
  const alone = (emf: number): [number, StepGroup] => {
    const { element, part } = circuit.emfs[emf]!;
    return [emf, part.inStep === "system" ? UTILITY : element];
  };
  const groups = new Map(emfs.map(alone));
  const machines = emfs.filter((emf) => circuit.emfs[emf]!.part.inStep === "when-joined");
  if (machines.length === 0) return groups;
  const labels = phaseIslands(circuit);
  const linked = new FewIslands();
  for (const [a, b] of links)
    if (isPhase(circuit, a) && isPhase(circuit, b)) linked.join(labels[a]!, labels[b]!);
  const islandOf = (node: number) => linked.labelOf(labels[node]!);
  const phasesOf = (emf: number): number[] =>
    [...circuit.emfs[emf]!.legs, circuit.emfs[emf]!.star].filter((node) => isPhase(circuit, node));
  const fed = new Set(
    emfs.filter((emf) => groups.get(emf) === UTILITY).flatMap((it) => phasesOf(it).map(islandOf)),
  );
  for (const emf of machines)
    if (phasesOf(emf).some((node) => fed.has(islandOf(node)))) groups.set(emf, UTILITY);
  return groups;
}

/** The groups of all that drives a circuit as drawn: of each supply that is on, and of circuits alongside, by their elements. */
export const groupsAsDrawn: (circuit: Circuit) => {
  readonly ofEmf: ReadonlyMap<number, StepGroup>;
  readonly all: readonly StepGroup[];
} = perObject((circuit: Circuit) => {
  const { emfOn } = standingOf(circuit);
  const ofEmf = stepGroups(
    circuit,
    circuit.emfs.flatMap((_, emf) => (emfOn[emf] === 1 ? [emf] : [])),
  );
  const alongside = circuit.stretches.flatMap((it) => it.alongside.map(({ element }) => element));
  return { ofEmf, all: [...new Set([...ofEmf.values(), ...alongside])].sort((a, b) => a - b) };
});
