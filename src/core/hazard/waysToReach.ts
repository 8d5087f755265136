import { type Circuit, EARTH, EDGE, Islands, reachGraphOf, type Standing, tiedNeutrals } from "../network";
import { inOrder, keyOf, SetsWithin, type UpsetSet } from "./search";
import { MOST_STRENGTH } from "./tolerances";
import type { DrawnUpset, Effect } from "./upsets";

interface ReachQuestion {
  readonly circuit: Circuit;
  readonly standing: Standing;
  readonly upsets: readonly DrawnUpset[];
  readonly effects: readonly Effect[];
  readonly groundsLifted: boolean;
}

/** The ways by which sources reach some nodes after upsets. What joins already is drawn together once for all of them. */
export function waysToReach(question: ReachQuestion, nodes: readonly number[]): WaysToReach[] {
  const [forward, any] = [new Side(question, true), new Side(question, false)];
  return nodes.map((node) => new WaysToReach(node, forward, any));
}

/**
 * Whether a source reaches a node after some upsets: forward, and in any way. A set is asked in as many steps as it joins
 * places that do not join already. Exact as long as no upset ties a neutral.
 */
export class WaysToReach {
  constructor(
    private readonly node: number,
    private readonly forward: Side,
    private readonly any: Side,
  ) {}

  isReachedForward = (set: UpsetSet): boolean => this.forward.isReached(this.node, set);
  isReached = (set: UpsetSet): boolean => this.any.isReached(this.node, set);

  /** The minimal sets after which a source reaches the node, in either way; `isAll` is false where there are more than so many. */
  sets(most: number): { readonly sets: readonly UpsetSet[]; readonly isAll: boolean } {
    const [forward, any] = [this.forward.sets(this.node, most), this.any.sets(this.node, most)];
    return { sets: [...any.sets, ...forward.sets], isAll: forward.isAll && any.isAll };
  }
}

/** The graph of conductors with everything that joins as drawn contracted to one place, walked back from a target. */
class Side {
  /** the place that a node is in; `NOWHERE` for one that is tied to earth */
  private readonly placeOf: (node: number) => number;
  private readonly isSeed: Uint8Array;
  /** places that feed a place through transformers, where only forward counts */
  private readonly upstream = new Map<number, number[]>();
  /** by upset: the places that it joins, and those at which it starts a supply */
  private readonly joined: (readonly (readonly [number, number])[])[];
  private readonly starts: (readonly number[])[];
  private readonly strengths: readonly number[];
  private readonly seenIn: Int32Array;
  private walks = 0;

  constructor({ circuit, standing, upsets, effects, groundsLifted }: ReachQuestion, forward: boolean) {
    this.strengths = upsets.map(({ strength }) => strength);
    const graph = reachGraphOf(circuit);
    const tied = tiedNeutrals(circuit, standing);
    const isOpen = (node: number) => node !== EARTH && tied[node] === 0;
    const places = new Islands(graph.nodeCount);
    for (let edge = 0; edge < graph.edgeCount; edge++) {
      const [from, to] = [graph.from[edge]!, graph.to[edge]!];
      if (standing.edgeOn[edge] === 0 || !isOpen(from) || !isOpen(to)) continue;
      const kind = graph.kind[edge]!;
      if (forward ? kind === EDGE.metallic : !(kind === EDGE.ground && groundsLifted)) places.join(from, to);
    }
    const at = (node: number) => places.labelOf(node);
    if (forward)
      for (let edge = 0; edge < graph.edgeCount; edge++) {
        const [from, to] = [graph.from[edge]!, graph.to[edge]!];
        if (graph.kind[edge] !== EDGE.forward || !isOpen(from) || !isOpen(to)) continue;
        listed(this.upstream, at(to)).push(at(from));
      }
    this.placeOf = (node) => (tied[node] === 1 ? NOWHERE : at(node));
    this.isSeed = new Uint8Array(graph.nodeCount);
    circuit.emfs.forEach(({ part, legs, star }, emf) => {
      if (standing.emfOn[emf] === 0 || (forward && part.role === "generator")) return;
      for (const node of [...legs, star]) if (isOpen(node)) this.isSeed[at(node)] = 1;
    });
    this.joined = effects.map(({ joins, rejoined }) =>
      [
        ...joins.map((join) => graph.edgeOfJoin[join]!).filter((edge) => edge !== -1),
        ...rejoined.map(({ stretch, letter }) => graph.edgesOfStretch[stretch]![letter]!),
      ]
        .map((edge) => [graph.from[edge]!, graph.to[edge]!] as const)
        .filter(([from, to]) => isOpen(from) && isOpen(to))
        .map(([from, to]) => [at(from), at(to)] as const),
    );
    this.starts = effects.map(({ emfs }) =>
      emfs
        .filter(({ part }) => !forward || part.role !== "generator")
        .flatMap(({ emf }) => [...circuit.emfs[emf]!.legs, circuit.emfs[emf]!.star])
        .filter(isOpen)
        .map(at),
    );
    this.seenIn = new Int32Array(graph.nodeCount);
  }

  isReached(node: number, set: UpsetSet): boolean {
    const target = this.placeOf(node);
    return target !== NOWHERE && this.walk(target, set) === undefined;
  }

  /** Places from which the target would be reached; undefined where a supply stands at one of them. */
  private walk(target: number, set: UpsetSet): number[] | undefined {
    const walk = ++this.walks;
    const queue = [target];
    this.seenIn[target] = walk;
    const go = (place: number) => {
      if (this.seenIn[place] === walk) return;
      this.seenIn[place] = walk;
      queue.push(place);
    };
    for (const place of queue) {
      if (this.isSeed[place] === 1 || set.some((upset) => this.starts[upset]!.includes(place)))
        return undefined;
      this.upstream.get(place)?.forEach(go);
      for (const upset of set)
        for (const [a, b] of this.joined[upset]!) {
          if (a === place) go(b);
          if (b === place) go(a);
        }
    }
    return queue;
  }

  /** Minimal sets up to the most strength, found by going on over upsets that stand open where the walk has come. */
  sets(node: number, most: number): { readonly sets: readonly UpsetSet[]; readonly isAll: boolean } {
    const target = this.placeOf(node);
    if (target === NOWHERE) return { sets: [], isAll: true };
    const opensAt = new Map<number, Set<number>>();
    this.joined.forEach((joined, upset) => {
      for (const place of joined.flat()) listed(opensAt, place, () => new Set<number>()).add(upset);
    });
    this.starts.forEach((starts, upset) => {
      for (const place of starts) listed(opensAt, place, () => new Set<number>()).add(upset);
    });
    const least = this.leastFrom();
    const found: UpsetSet[] = [];
    const within = new SetsWithin();
    const asked = new Set<number | string>();
    const explore = (set: UpsetSet) => {
      const key = keyOf(set);
      if (asked.has(key) || asked.size > most || within.holds(set)) return;
      asked.add(key);
      const region = this.walk(target, set);
      if (region === undefined) {
        found.push(set);
        within.add(set);
        return;
      }
      const next = new Set(region.flatMap((place) => [...(opensAt.get(place) ?? [])]));
      for (const upset of next)
        if (!set.includes(upset) && least(set, upset) <= MOST_STRENGTH) explore(inOrder([...set, upset]));
    };
    explore([]);
    // A set may have been found before a smaller one within it.
    return {
      sets: found.filter((set) => !within.holdsSmaller(set)),
      isAll: asked.size <= most,
    };
  }

  /**
   * The least strength of any set that reaches, holds this one and goes on over an upset: never too high. Counted on places
   * drawn together so far that an upset lies between two of them; one of several conductors may be gone over again for nothing.
   */
  private leastFrom(): (set: UpsetSet, upset: number) => number {
    const coarse = new Islands(this.isSeed.length);
    for (const joined of this.joined)
      for (const side of [0, 1] as const)
        for (const ends of joined.slice(1)) coarse.join(joined[0]![side], ends[side]);
    for (const [place, above] of this.upstream) for (const it of above) coarse.join(place, it);
    const far = new Map<number, number>();
    const lower = (place: number, to: number): boolean => {
      const at = coarse.labelOf(place);
      if (to > MOST_STRENGTH || (far.get(at) ?? Infinity) <= to) return false;
      far.set(at, to);
      return true;
    };
    this.isSeed.forEach((is, place) => is === 1 && lower(place, 0));
    this.starts.forEach((starts, upset) => starts.forEach((place) => lower(place, this.strengths[upset]!)));
    const farFrom = (place: number) => far.get(coarse.labelOf(place)) ?? Infinity;
    for (let changed = true; changed;) {
      changed = false;
      this.joined.forEach(([ends], upset) => {
        if (ends === undefined) return;
        const [a, b] = ends;
        const more = this.strengths[upset]!;
        if (lower(a, farFrom(b) + more) || lower(b, farFrom(a) + more)) changed = true;
      });
    }
    const strengthOf = (some: UpsetSet) => some.reduce((sum, it) => sum + this.strengths[it]!, 0);
    return (set, upset) => {
      const taken = [...set, upset];
      const ends = this.joined[upset]![0];
      const beyond =
        this.starts[upset]!.length > 0 || ends === undefined ? 0 : Math.min(...ends.map(farFrom));
      const again = strengthOf(taken.filter((it) => this.joined[it]!.length > 1));
      return strengthOf(taken) + Math.max(0, beyond - again);
    };
  }
}

/** The place of a target that is tied to earth: nothing reaches it. */
const NOWHERE = -1;

function listed<Key, List>(
  map: Map<Key, List>,
  key: Key,
  fresh: () => List = () => [] as unknown as List,
): List {
  let list = map.get(key);
  if (list === undefined) map.set(key, (list = fresh()));
  return list;
}
