import { perObject } from "../document";
import type { Circuit } from "./circuit";
import { FewIslands } from "./islands";
import { isPhase, phaseIslands } from "./phaseIslands";
import { standingOf } from "./running";

/** The group of all that is in step with the utility; any other group is one element alone, by its index. */
export const UTILITY = -1;

/** Sources that keep step with each other: `UTILITY`, or the index of the one element that nothing keeps in step. */
export type StepGroup = number;

/** Which group each of some supplies is in, and what one more would be in. */
export interface StepGroups {
  readonly of: ReadonlyMap<number, StepGroup>;
  /** the group of one more supply that starts; where it is one that others follow, theirs are to be asked anew */
  groupOf(emf: number): StepGroup;
}

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
): StepGroups {
  const labels = phaseIslands(circuit);
  const linked = new FewIslands();
  for (const [a, b] of links)
    if (isPhase(circuit, a) && isPhase(circuit, b)) linked.join(labels[a]!, labels[b]!);
  const fed = new Set<number>();
  const touches = (emf: number, island: (label: number) => boolean): boolean => {
    const { legs, star } = circuit.emfs[emf]!;
    const isSo = (node: number) => isPhase(circuit, node) && island(linked.labelOf(labels[node]!));
    return legs.some(isSo) || isSo(star);
  };
  for (const emf of emfs)
    if (isFollowed(circuit, emf))
      touches(emf, (island) => {
        fed.add(island);
        return false;
      });
  const groupOf = (emf: number): StepGroup => {
    const { element, part } = circuit.emfs[emf]!;
    const isInStep =
      isFollowed(circuit, emf) || (part.inStep === "when-joined" && touches(emf, (it) => fed.has(it)));
    return isInStep ? UTILITY : element;
  };
  return { of: new Map(emfs.map((emf) => [emf, groupOf(emf)])), groupOf };
}

/** Whether machines that are joined to a supply keep step with it. */
export const isFollowed = ({ emfs }: Circuit, emf: number): boolean => emfs[emf]!.part.inStep === "system";

/** The groups of all that drives a circuit as drawn: of each supply that is on, and of circuits alongside, by their elements. */
export const groupsAsDrawn: (circuit: Circuit) => {
  readonly ofEmf: ReadonlyMap<number, StepGroup>;
  readonly all: readonly StepGroup[];
} = perObject((circuit: Circuit) => {
  const { emfOn } = standingOf(circuit);
  const { of: ofEmf } = stepGroups(
    circuit,
    circuit.emfs.flatMap((_, emf) => (emfOn[emf] === 1 ? [emf] : [])),
  );
  const alongside = circuit.stretches.flatMap((it) => it.alongside.map(({ element }) => element));
  return { ofEmf, all: [...new Set([...ofEmf.values(), ...alongside])].sort((a, b) => a - b) };
});
