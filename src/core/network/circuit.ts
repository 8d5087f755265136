import {
  type Alongside,
  type Branch,
  type CircuitElement,
  deviceOf,
  type Emf,
  type End,
  type Join,
  type Node,
  type Part,
  type Place,
  type Stretch,
  type Unit,
} from "../devices";
import { complete, completePoint, perObject, type SavedElement, type System } from "../document";
import { type ConductorId, conductorId, type ElementId, type Letter, LETTERS, type PointId } from "../terms";
import { nominalVoltsOf, type NominalVolts } from "./nominal";

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
  readonly closed: Uint8Array;
  readonly element: Int32Array;
  readonly letter: Uint8Array;
}

/** A stretch of line between nodes, one of each for every letter. */
export interface StretchAt {
  readonly element: number;
  readonly part: Stretch;
  readonly from: readonly number[];
  readonly to: readonly number[];
  readonly alongside: readonly Alongside[];
}

export interface UnitAt {
  readonly element: number;
  readonly part: Unit;
  /** node pairs (plus, minus), primary windings first */
  readonly windings: readonly (readonly [plus: number, minus: number])[];
}

export interface BranchAt {
  readonly element: number;
  readonly part: Branch;
  readonly from: number;
  readonly to: number;
}

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

/** The letters of the conductors at every point, in the order of `LETTERS`. */
export function lettersAtPoints(system: System, elements: readonly CircuitElement[]): Map<PointId, Letter[]> {
  const brought = new Map<PointId, number>();
  for (const id of Object.keys(system.points)) brought.set(id as PointId, 0);
  for (const element of elements) {
    const ends = element as unknown as Record<End, PointId>;
    for (const [end, letter] of deviceOf(element.kind).brings(element as never))
      brought.set(ends[end], (brought.get(ends[end]) ?? 0) | (1 << LETTERS.indexOf(letter)));
  }
  const ofMask = LETTERS_OF_MASK;
  return new Map([...brought].map(([point, mask]) => [point, ofMask[mask]!]));
}

const LETTERS_OF_MASK: Letter[][] = Array.from({ length: 64 }, (_, mask) =>
  LETTERS.filter((_letter, bit) => (mask & (1 << bit)) !== 0),
);

/** Parts are remembered for each saved record and for what its place told it, so that an edit builds only what it changed. */
const knownParts = new WeakMap<SavedElement, { readonly told: string; readonly parts: readonly Part[] }>();

/** The point at each of an element's ends; a `nearby` has those of its span. */
type EndPoints = Readonly<Partial<Record<End, string>>>;

function endPointsOf(system: System, element: CircuitElement): EndPoints {
  if (element.kind !== "nearby") return element as unknown as EndPoints;
  const beside = besideOf(system, element.span);
  return beside === undefined ? {} : { from: beside.from, to: beside.to };
}

function besideOf(system: System, span: string) {
  const saved = system.elements[span as ElementId];
  const element = saved === undefined ? undefined : complete(saved);
  return element?.kind === "span" ? element : undefined;
}

/** What the circuit knows of the place of one of its elements. */
export function placeFor(circuit: Circuit, index: number): Place {
  const { system, nodeOf, nominalVolts } = circuit;
  const element = complete(system.elements[circuit.elementIds[index]!]!);
  return placeOf(system, element, (point, letter) => nodeOf.get(conductorId(point, letter)), nominalVolts);
}

function placeOf(
  system: System,
  element: CircuitElement,
  nodeAt: (point: string, letter: Letter) => number | undefined,
  nominalVolts: NominalVolts,
): Place {
  const points = endPointsOf(system, element);
  const beside = element.kind === "nearby" ? besideOf(system, element.span) : undefined;
  return {
    frequencyHz: system.frequencyHz,
    hasNeutral: (end) => points[end] !== undefined && nodeAt(points[end], "N") !== undefined,
    nominalVolts: (end) => {
      const first = (element as { phases?: string }).phases?.[0];
      const node = first === undefined ? undefined : nodeAt(points[end] ?? "", first as Letter);
      return node === undefined ? 0 : nominalVolts[node]!;
    },
    ...(beside === undefined
      ? {}
      : { span: { letters: [...beside.phases] as Letter[], parted: [...beside.parted] as Letter[] } }),
  };
}

/** All that a place tells an element, as a key: the same key gives the same parts. */
const told = (place: Place, element: CircuitElement): string =>
  [
    place.frequencyHz,
    ...(["from", "to", "at"] as const).map((end) => place.hasNeutral(end)),
    element.kind === "load" ? place.nominalVolts("at") : "",
    place.span === undefined ? "" : `${place.span.letters.join("")}/${place.span.parted.join("")}`,
  ].join();

export const circuitOf: (system: System) => Circuit = perObject(buildCircuit);

function buildCircuit(system: System): Circuit {
  const pointIds = Object.keys(system.points) as PointId[];
  const elementIds = Object.keys(system.elements) as ElementId[];
  const saved = elementIds.map((id) => system.elements[id]!);
  const elements = saved.map(complete);
  const letters = lettersAtPoints(system, elements);

  const conductorIds: ConductorId[] = [];
  const nodeOf = new Map<ConductorId, number>();
  const pointOfNode: number[] = [];
  const letterOfNode: (Letter | "")[] = [];
  const firstNode = new Map<PointId, readonly number[]>();
  pointIds.forEach((point, index) => {
    const byLetter = new Array<number>(LETTERS.length).fill(EARTH);
    for (const letter of letters.get(point)!) {
      const node = conductorIds.length;
      byLetter[LETTERS.indexOf(letter)] = node;
      const id = conductorId(point, letter);
      nodeOf.set(id, node);
      conductorIds.push(id);
      pointOfNode.push(index);
      letterOfNode.push(letter);
    }
    firstNode.set(point, byLetter);
  });
  const conductorCount = conductorIds.length;
  const ownerOfNode: number[] = new Array<number>(conductorCount).fill(-1);

  const endPoints = elements.map((element) => endPointsOf(system, element));

  /** Node numbers of one element's part ends; a node inside it is numbered when first met. */
  function resolver(index: number): (node: Node) => number {
    const inner = new Map<string, number>();
    const ends = endPoints[index]!;
    return (node) => {
      if (node === "earth") return EARTH;
      const slash = node.indexOf("/");
      const where = node.slice(0, slash);
      const name = node.slice(slash + 1);
      if (where === "inner") {
        const known = inner.get(name);
        if (known !== undefined) return known;
        const fresh = pointOfNode.length;
        inner.set(name, fresh);
        pointOfNode.push(-1);
        letterOfNode.push("");
        ownerOfNode.push(index);
        return fresh;
      }
      return firstNode.get(ends[where as End] as PointId)![LETTERS.indexOf(name as Letter)]!;
    };
  }

  const resolvers = elements.map((_, index) => resolver(index));
  const nominalVolts = nominalVoltsOf({ elements, endPoints, nodeOf, conductorCount });

  const nodeAt = (point: string, letter: Letter) => {
    const node = firstNode.get(point as PointId)?.[LETTERS.indexOf(letter)];
    return node === EARTH ? undefined : node;
  };
  const parts = elements.map((element, index): readonly Part[] => {
    const place = placeOf(system, element, nodeAt, nominalVolts);
    const key = told(place, element);
    const known = knownParts.get(saved[index]!);
    if (known !== undefined && known.told === key) return known.parts;
    const fresh = deviceOf(element.kind).parts(element as never, place);
    knownParts.set(saved[index]!, { told: key, parts: fresh });
    return fresh;
  });

  const joins: {
    from: number;
    to: number;
    common: number;
    ratio: number;
    closed: boolean;
    element: number;
    letter: number;
  }[] = [];
  const stretches: StretchAt[] = [];
  const units: UnitAt[] = [];
  const branches: BranchAt[] = [];
  const emfs: EmfAt[] = [];
  const alongside = new Map<number, Alongside[]>();
  const indexOfElement = new Map(elementIds.map((id, index) => [id, index]));

  parts.forEach((list, element) => {
    const resolve = resolvers[element]!;
    for (const part of list) {
      switch (part.part) {
        case "join":
          joins.push(joinRow(part, element, resolve));
          break;
        case "stretch":
          stretches.push({
            element,
            part,
            from: part.letters.map((letter) => resolve(`from/${letter}`)),
            to: part.letters.map((letter) => resolve(`to/${letter}`)),
            alongside: [],
          });
          break;
        case "unit":
          units.push({
            element,
            part,
            windings: [...part.primary, ...part.secondary].map(({ plus, minus }) => [
              resolve(plus),
              resolve(minus),
            ]),
          });
          break;
        case "branch":
          branches.push({ element, part, from: resolve(part.from), to: resolve(part.to) });
          break;
        case "emf":
          emfs.push({
            element,
            part,
            legs: part.legs.map(({ node }) => resolve(node)),
            star: resolve(part.star),
          });
          break;
        case "alongside": {
          const span = indexOfElement.get((elements[element] as { span?: ElementId }).span!)!;
          alongside.set(span, [...(alongside.get(span) ?? []), part]);
          break;
        }
      }
    }
  });

  const rods: { node: number; ohms: number }[] = [];
  pointIds.forEach((id) => {
    const ohms = completePoint(system.points[id]!).earthOhms;
    const node = nodeOf.get(conductorId(id, "N"));
    if (ohms !== undefined && node !== undefined) rods.push({ node, ohms });
  });

  return {
    system,
    pointIds,
    elementIds,
    conductorIds,
    conductorCount,
    nodeCount: pointOfNode.length,
    nodeOf,
    pointOfNode: Int32Array.from(pointOfNode),
    ownerOfNode: Int32Array.from(ownerOfNode),
    letterOfNode,
    rods,
    joins: {
      count: joins.length,
      from: Int32Array.from(joins, (it) => it.from),
      to: Int32Array.from(joins, (it) => it.to),
      common: Int32Array.from(joins, (it) => it.common),
      ratio: Float64Array.from(joins, (it) => it.ratio),
      closed: Uint8Array.from(joins, (it) => (it.closed ? 1 : 0)),
      element: Int32Array.from(joins, (it) => it.element),
      letter: Uint8Array.from(joins, (it) => it.letter),
    },
    stretches:
      alongside.size === 0
        ? stretches
        : stretches.map((it) => ({ ...it, alongside: alongside.get(it.element) ?? [] })),
    units,
    branches,
    emfs,
    nominalVolts,
    frequencyHz: system.frequencyHz,
  };
}

const joinRow = (part: Join, element: number, resolve: (node: Node) => number) => ({
  from: resolve(part.from),
  to: resolve(part.to),
  common: part.common === undefined ? EARTH : resolve(part.common),
  ratio: part.ratio ?? 1,
  closed: part.closed,
  element,
  letter: LETTERS.indexOf(part.letter),
});
