import { perObject, type Settings } from "../document";
import {
  type Circuit,
  EARTH,
  EDGE,
  feedNotDrawn,
  Islands,
  REACH,
  type Reach,
  reachGraphOf,
  reachOf,
  type Standing,
  standingOf,
} from "../network";
import { type Solution, solutionOf, type Variant, worstAt } from "../phasor";
import type { ConductorState } from "./types";

/** Whether the temporary grounds are in place or lifted for a question. */
export interface GroundsQuestion {
  readonly groundsLifted: boolean;
}

/** Labels every node with the lowest-numbered one that it is metallically joined to: the same conductor. */
export function metallicIslands(circuit: Circuit, { edgeOn }: Standing): Int32Array {
  const { edgeCount, from, to, kind } = reachGraphOf(circuit);
  const islands = new Islands(circuit.nodeCount);
  for (let edge = 0; edge < edgeCount; edge++)
    if (kind[edge] === EDGE.metallic && edgeOn[edge] === 1) islands.join(from[edge]!, to[edge]!);
  return islands.labels();
}

/** Islands that temporary ground sets and faults hold, by label. */
export interface Shorts {
  /** tied to a ground set whose neutral is tied to earth, or whose rod is */
  readonly grounded: ReadonlySet<number>;
  /** tied to any ground set */
  readonly anyGround: ReadonlySet<number>;
  /** tied to a fault */
  readonly faulted: ReadonlySet<number>;
}

/** Which islands ground sets and faults hold as drawn; `tied` marks neutrals that are tied to earth. */
export function shortsOf(circuit: Circuit, islands: Int32Array, tied: Uint8Array): Shorts {
  const grounded = new Set<number>();
  const anyGround = new Set<number>();
  const faulted = new Set<number>();
  const hasRod = new Set<number>();
  for (const { element, part, to } of circuit.branches)
    if (part.role === "ground" && to === EARTH) hasRod.add(element);
  for (const { element, part, from, to } of circuit.branches) {
    if (part.role === "fault") {
      for (const node of [from, to]) if (node !== EARTH && tied[node] === 0) faulted.add(islands[node]!);
    } else if (part.role === "ground" && to !== EARTH) {
      anyGround.add(islands[from]!);
      if (hasRod.has(element) || tied[to] === 1) grounded.add(islands[from]!);
    }
  }
  return { grounded, anyGround, faulted };
}

/** A circuit looked at with its temporary grounds in place or lifted: reach, islands, and volts when they are asked for. */
export class View {
  readonly reach: Reach;
  readonly islands: Int32Array;
  readonly shorts: Shorts;

  constructor(
    readonly circuit: Circuit,
    readonly settings: Settings,
    readonly question: GroundsQuestion,
  ) {
    const standing = standingOf(circuit);
    this.reach = reachOf(circuit, standing, question);
    this.islands = metallicIslands(circuit, standing);
    this.shorts = shortsOf(circuit, this.islands, this.reach.tied);
  }

  /** The two solutions of this view: loads as drawn, loads off. */
  get solutions(): readonly [Solution, Solution] {
    return (this.#solutions ??= this.#solved({ grounds: !this.question.groundsLifted, faults: true }));
  }
  #solutions: readonly [Solution, Solution] | undefined;

  #solved(variant: Omit<Variant, "loads">): readonly [Solution, Solution] {
    return [
      solutionOf(this.circuit, { loads: true, ...variant }),
      solutionOf(this.circuit, { loads: false, ...variant }),
    ];
  }

  /** The same with ground sets and faults lifted: what a faulted conductor would stand at. */
  private get shortsLifted(): readonly [Solution, Solution] {
    return this.#solved({ grounds: false, faults: false });
  }

  /** Higher of the two solutions' volts to earth, each the worst over angles that nothing fixes. */
  volts(node: number): number {
    return higherAt(this.solutions, node);
  }

  /**
   * The volts that decide a state: of a neutral that is not tied to earth, the highest of any conductor joined to it
   * through loads, since one leg's load off may be worse than both on or both off.
   */
  stateVolts(node: number): number {
    return this.#decidingVolts(node, this.solutions);
  }

  #decidingVolts(node: number, solutions: readonly [Solution, Solution]): number {
    const own = higherAt(solutions, node);
    if (this.circuit.letterOfNode[node] !== "N" || this.reach.tied[node] === 1) return own;
    return loadedConductors(this.circuit, this.islands, node).reduce(
      (most, other) => Math.max(most, higherAt(solutions, other)),
      own,
    );
  }

  /** State of a conductor by the file format's table. What nobody drew a feed for is neither isolated nor induced. */
  state(node: number): ConductorState {
    const state = this.stateIfFed(node);
    return (state === "isolated" || state === "induced") && feedNotDrawn(this.circuit)[node] === 1
      ? "unknown"
      : state;
  }

  /** What makes a conductor live, if anything does. */
  liveBy(node: number): LiveBy | undefined {
    const state = this.stateIfFed(node);
    if (state === "induced") return "induced";
    if (state !== "energized" && state !== "backfed" && state !== "faulted") return undefined;
    return (this.reach.how[node]! & REACH.forward) !== 0 ? "energized" : "fed";
  }

  /** The same, whether or not its feed is drawn: what this drawing alone does to it. */
  stateIfFed(node: number): ConductorState {
    const { reach, islands, shorts, settings } = this;
    if (this.circuit.letterOfNode[node] === "N" && reach.tied[node] === 1) return "neutral";
    const how = reach.how[node]!;
    const isEnergized = (how & REACH.forward) !== 0;
    const island = islands[node]!;
    const isShorted =
      shorts.faulted.has(island) || (!this.question.groundsLifted && shorts.anyGround.has(island));
    if (
      isShorted &&
      (isEnergized || (how !== 0 && this.#decidingVolts(node, this.shortsLifted) >= settings.hazardVolts))
    )
      return "faulted";
    if (isEnergized) return "energized";
    if (this.stateVolts(node) >= settings.hazardVolts) return how === 0 ? "induced" : "backfed";
    return !this.question.groundsLifted && shorts.grounded.has(island) ? "grounded" : "isolated";
  }
}

const higherAt = ([drawn, off]: readonly [Solution, Solution], node: number): number =>
  Math.max(worstAt(drawn, node), worstAt(off, node));

/** Phase conductors that loads join to this neutral's island. */
function loadedConductors(circuit: Circuit, islands: Int32Array, neutral: number): number[] {
  return circuit.branches.flatMap(({ part, from, to }) =>
    part.role === "load" &&
    to !== EARTH &&
    circuit.letterOfNode[to] === "N" &&
    islands[to] === islands[neutral]
      ? [from]
      : [],
  );
}

const viewsOf = perObject((_circuit: Circuit) => new Map<string, View>());

/** The view of a circuit; remembered for each question and limit. */
export function viewOf(circuit: Circuit, settings: Settings, question: GroundsQuestion): View {
  const known = viewsOf(circuit);
  const key = `${question.groundsLifted} ${settings.hazardVolts}`;
  const found = known.get(key);
  if (found !== undefined) return found;
  const fresh = new View(circuit, settings, question);
  known.set(key, fresh);
  return fresh;
}

/** What makes a conductor live: a source directly or forward, whatever feeds it otherwise, or coupling. */
export type LiveBy = "energized" | "fed" | "induced";
