import {
  type Alongside,
  type Branch,
  type CircuitElement,
  deviceOf,
  type Emf,
  type End,
  type Part,
  type Stretch,
  type Unit,
} from "../devices";
import type { System } from "../document";
import type { ConductorId, ElementId, Letter, PointId } from "../terms";
import type { NominalVolts } from "./nominal";

/** Stands for earth wherever a node number is asked for. */
export const EARTH = -1;

/** Ideal connections as columns: row k joins node `from[k]` to node `to[k]` where `closed[k]`. */
export interface Joins {
  readonly count: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** the node that the ratio is taken against */
  readonly common: Int32Array;
  readonly ratio: Float64Array;
  /** 1 where the ratio can be other than 1 */
  readonly steps: Uint8Array;
  readonly closed: Uint8Array;
  readonly element: Int32Array;
  readonly letter: Uint8Array;
}

/** A live circuit alongside, and which element it is. */
export interface AlongsideAt extends Alongside {
  readonly element: number;
}

/** A stretch of line between nodes, one of each for every letter. */
export interface StretchAt {
  readonly element: number;
  readonly part: Stretch;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly alongside: readonly AlongsideAt[];
}

/** The two ends of a stretch's neutral; none where it has none. */
export function neutralsOf({ part, from, to }: StretchAt): number[] {
  const at = part.letters.indexOf("N");
  return at === -1 ? [] : [from[at]!, to[at]!];
}

/** A transformer unit between its nodes; `element` is an index, here and below. */
export interface UnitAt {
  readonly element: number;
  readonly part: Unit;
  /** node pairs (plus, minus), primary windings first */
  readonly windings: readonly (readonly [plus: number, minus: number])[];
}

/** A branch between two nodes, of which one may be `EARTH`. */
export interface BranchAt {
  readonly element: number;
  readonly part: Branch;
  readonly from: number;
  readonly to: number;
}

/** A supply: one node for each of its legs, and the node of its star. */
export interface EmfAt {
  readonly element: number;
  readonly part: Emf;
  readonly legs: readonly number[];
  readonly star: number;
}

/**
 * A drawing as numbered nodes and the parts between them: the conductors of the points first, then nodes inside
 * elements. Nothing here knows a device kind; whatever is open stays in, with its flag.
 */
export interface Circuit {
  readonly system: System;
  /** the same object for circuits whose nodes and parts lie alike, whatever is open: what depends on that alone is kept by it */
  readonly structure: object;
  /** the same object for circuits that also say the same of every part: they stand alike, whatever the drawing looks like */
  readonly values: object;
  /** parts of each element, as its device gave them */
  readonly parts: readonly (readonly Part[])[];
  readonly pointIds: readonly PointId[];
  readonly elementIds: readonly ElementId[];
  readonly conductorIds: readonly ConductorId[];
  readonly conductorCount: number;
  readonly nodeCount: number;
  readonly nodeOf: ReadonlyMap<ConductorId, number>;
  /** index of a node's point; −1 inside an element */
  readonly pointOfNode: Int32Array;
  /** the element that an inner node belongs to; −1 for conductors */
  readonly ownerOfNode: Int32Array;
  readonly letterOfNode: readonly (Letter | "")[];
  /** driven ground of a point, by the node of its neutral: ohms */
  readonly rods: readonly { readonly node: number; readonly ohms: number }[];
  readonly joins: Joins;
  readonly stretches: readonly StretchAt[];
  readonly units: readonly UnitAt[];
  readonly branches: readonly BranchAt[];
  readonly emfs: readonly EmfAt[];
  /** line to line at each node [V] */
  readonly nominalVolts: NominalVolts;
  readonly frequencyHz: number;
}

/** The point at each end of an element. */
export function endsOf(element: CircuitElement): readonly (readonly [End, PointId])[] {
  return deviceOf(element.kind).ends.map(
    (end) => [end, (element as unknown as Record<End, string>)[end] as PointId] as const,
  );
}
