import { type Circuit, EARTH, EDGE, reachGraphOf, type Standing, tiedNeutrals } from "../network";
import { inOrder, isWithin, MOST_STRENGTH, type UpsetSet } from "./search";
import type { DrawnUpset, Effect } from "./upsets";

/** The minimal sets of upsets after which a source reaches a node: forward, and in any way. */
export interface WaysToReach {
  readonly forward: readonly UpsetSet[];
  readonly any: readonly UpsetSet[];
}

interface Question {
  readonly circuit: Circuit;
  readonly standing: Standing;
  readonly upsets: readonly DrawnUpset[];
  readonly effects: readonly Effect[];
  readonly groundsLifted: boolean;
}

/**
 * Walks back from the node over whatever joins, and over upsets where the walk meets their open ends, until it stands at
 * a source that is on or could be started. Complete up to the most strength, as long as no upset ties a neutral.
 */
export function waysToReach(question: Question, node: number): WaysToReach {
  return { forward: search(question, node, true), any: search(question, node, false) };
}

function search(
  { circuit, standing, upsets, effects, groundsLifted }: Question,
  target: number,
  forward: boolean,
): UpsetSet[] {
  const graph = reachGraphOf(circuit);
  const tied = tiedNeutrals(circuit, standing);
  if (tied[target] === 1) return [];
  const isSeed = new Uint8Array(graph.nodeCount);
  const startsAt = new Map<number, number[]>();
  const opensAt = new Map<number, number[]>();
  const listen = (map: Map<number, number[]>, node: number, upset: number) => {
    if (node !== EARTH && tied[node] === 0) map.set(node, [...(map.get(node) ?? []), upset]);
  };
  circuit.emfs.forEach(({ part, legs, star }, emf) => {
    if (standing.emfOn[emf] === 0 || (forward && part.role !== "utility")) return;
    for (const node of [...legs, star]) if (node !== EARTH) isSeed[node] = 1;
  });
  const edgesOf = effects.map(({ joins, rejoined }) => [
    ...joins.map((join) => graph.edgeOfJoin[join]!).filter((edge) => edge !== -1),
    ...rejoined.map(({ stretch, letter }) => graph.edgesOfStretch[stretch]![letter]!),
  ]);
  effects.forEach(({ emfs }, upset) => {
    for (const edge of edgesOf[upset]!) {
      listen(opensAt, graph.from[edge]!, upset);
      listen(opensAt, graph.to[edge]!, upset);
    }
    for (const { emf, part } of emfs) {
      if (forward && part.role !== "utility") continue;
      for (const node of [...circuit.emfs[emf]!.legs, circuit.emfs[emf]!.star]) listen(startsAt, node, upset);
    }
  });

  const edgeOn = standing.edgeOn.slice();
  const found: UpsetSet[] = [];
  const asked = new Set<string>();
  const explore = (set: UpsetSet, strength: number) => {
    const key = set.join();
    if (asked.has(key) || found.some((it) => isWithin(it, set))) return;
    asked.add(key);
    const visited = walkBack(graph, edgeOn, tied, target, forward, groundsLifted);
    if (visited.some((node) => isSeed[node] === 1)) {
      found.push(set);
      return;
    }
    const closings = new Set<number>();
    for (const node of visited) {
      for (const upset of startsAt.get(node) ?? [])
        if (strength + upsets[upset]!.strength <= MOST_STRENGTH) found.push(added(set, upset));
      for (const upset of opensAt.get(node) ?? []) closings.add(upset);
    }
    for (const upset of closings) {
      const more = strength + upsets[upset]!.strength;
      if (set.includes(upset) || more > MOST_STRENGTH) continue;
      for (const edge of edgesOf[upset]!) edgeOn[edge] = 1;
      explore(added(set, upset), more);
      for (const edge of edgesOf[upset]!) edgeOn[edge] = 0;
    }
  };
  explore([], 0);
  return found.filter(
    (set, index) =>
      !found.some(
        (other, at) => at !== index && isWithin(other, set) && (other.length < set.length || at < index),
      ),
  );
}

const added = (set: UpsetSet, upset: number): UpsetSet =>
  set.includes(upset) ? set : inOrder([...set, upset]);

/** Nodes from which the target would be reached, over edges that are on. */
function walkBack(
  graph: ReturnType<typeof reachGraphOf>,
  edgeOn: Uint8Array,
  tied: Uint8Array,
  target: number,
  forward: boolean,
  groundsLifted: boolean,
): number[] {
  const seen = new Uint8Array(graph.nodeCount);
  const queue = [target];
  seen[target] = 1;
  for (const node of queue) {
    for (let at = graph.rowStart[node]!; at < graph.rowStart[node + 1]!; at++) {
      const way = graph.around[at]!;
      const edge = way >> 1;
      if (edgeOn[edge] === 0) continue;
      const kind = graph.kind[edge]!;
      if (kind === EDGE.ground && groundsLifted) continue;
      const entering = (way & 1) === 1;
      if (forward && kind !== EDGE.metallic && !(kind === EDGE.forward && entering)) continue;
      const other = entering ? graph.from[edge]! : graph.to[edge]!;
      if (seen[other] === 1 || tied[other] === 1) continue;
      seen[other] = 1;
      queue.push(other);
    }
  }
  return queue;
}
