import type { End, Join, Node, Part } from "../devices";
import { complete, completePoint, conductorsOf, type System } from "../document";
import { type ConductorId, conductorId, type ElementId, type Letter, LETTERS, type PointId } from "../terms";
import {
  type AlongsideAt,
  type BranchAt,
  type Circuit,
  EARTH,
  type EmfAt,
  type Joins,
  type StretchAt,
  type UnitAt,
} from "./circuit";
import { nominalVoltsOf } from "./nominal";
import { type EndPoints, endPointsOf, placeOf, rememberedParts } from "./places";

/** A system as a circuit, from nothing. */
export function buildCircuit(system: System): Circuit {
  const pointIds = Object.keys(system.points) as PointId[];
  const elementIds = Object.keys(system.elements) as ElementId[];
  const saved = elementIds.map((id) => system.elements[id]!);
  const elements = saved.map(complete);
  const endPoints = elements.map((element) => endPointsOf(system, element));
  const nodes = numberedConductors(system, pointIds);
  const { conductorIds, nodeOf, pointOfNode, letterOfNode } = nodes;
  const conductorCount = conductorIds.length;
  const nominalVolts = nominalVoltsOf({ elements, endPoints, nodeOf, conductorCount });

  const nodeAt = (point: string, letter: Letter) => {
    const node = nodes.byLetter.get(point as PointId)?.[LETTERS.indexOf(letter)];
    return node === EARTH ? undefined : node;
  };
  const parts = elements.map((element, index) =>
    rememberedParts(saved[index]!, element, placeOf(system, element, nodeAt, nominalVolts)),
  );
  const ownerOfNode = new Array<number>(conductorCount).fill(-1);
  const rows = rowsFrom(parts, (index) => resolver(nodes, ownerOfNode, endPoints[index]!, index));
  const besides = alongsideBySpan(parts, (index) => (elements[index] as { span?: ElementId }).span!);

  return {
    system,
    structure: {},
    values: {},
    parts,
    pointIds,
    elementIds,
    conductorIds,
    conductorCount,
    nodeCount: pointOfNode.length,
    nodeOf,
    pointOfNode: Int32Array.from(pointOfNode),
    ownerOfNode: Int32Array.from(ownerOfNode),
    letterOfNode,
    rods: rodsOf(system, pointIds, nodeOf),
    ...rows,
    stretches:
      besides.size === 0
        ? rows.stretches
        : rows.stretches.map((it) => ({ ...it, alongside: besides.get(elementIds[it.element]!) ?? [] })),
    nominalVolts,
    frequencyHz: system.frequencyHz,
  };
}

/** The conductors of the points as the first nodes, point by point, and what else is numbered after them. */
interface Numbered {
  readonly conductorIds: ConductorId[];
  readonly nodeOf: Map<ConductorId, number>;
  readonly pointOfNode: number[];
  readonly letterOfNode: (Letter | "")[];
  /** nodes of a point, letter by letter; EARTH where it has none */
  readonly byLetter: ReadonlyMap<PointId, readonly number[]>;
}

function numberedConductors(system: System, pointIds: readonly PointId[]): Numbered {
  const letters = conductorsOf(system);
  const conductorIds: ConductorId[] = [];
  const nodeOf = new Map<ConductorId, number>();
  const pointOfNode: number[] = [];
  const letterOfNode: (Letter | "")[] = [];
  const byLetter = new Map<PointId, readonly number[]>();
  pointIds.forEach((point, index) => {
    const nodes = new Array<number>(LETTERS.length).fill(EARTH);
    for (const letter of letters.get(point)!) {
      const node = conductorIds.length;
      nodes[LETTERS.indexOf(letter)] = node;
      const id = conductorId(point, letter);
      nodeOf.set(id, node);
      conductorIds.push(id);
      pointOfNode.push(index);
      letterOfNode.push(letter);
    }
    byLetter.set(point, nodes);
  });
  return { conductorIds, nodeOf, pointOfNode, letterOfNode, byLetter };
}

/** Node numbers of one element's part ends; a node inside it is numbered when first met. */
function resolver(
  { byLetter, pointOfNode, letterOfNode }: Numbered,
  ownerOfNode: number[],
  ends: EndPoints,
  index: number,
): (node: Node) => number {
  const inner = new Map<string, number>();
  return (node) => {
    if (node === "earth") return EARTH;
    const slash = node.indexOf("/");
    const where = node.slice(0, slash);
    const name = node.slice(slash + 1);
    if (where !== "inner")
      return byLetter.get(ends[where as End] as PointId)![LETTERS.indexOf(name as Letter)]!;
    const known = inner.get(name);
    if (known !== undefined) return known;
    const fresh = pointOfNode.length;
    inner.set(name, fresh);
    pointOfNode.push(-1);
    letterOfNode.push("");
    ownerOfNode.push(index);
    return fresh;
  };
}

/** The parts of all elements, kind by kind, each at its nodes. */
function rowsFrom(
  parts: Circuit["parts"],
  resolverOf: (element: number) => (node: Node) => number,
): Pick<Circuit, "joins" | "stretches" | "units" | "branches" | "emfs"> {
  const joins: JoinRow[] = [];
  const stretches: StretchAt[] = [];
  const units: UnitAt[] = [];
  const branches: BranchAt[] = [];
  const emfs: EmfAt[] = [];
  const add = (part: Part, element: number, resolve: (node: Node) => number) => {
    switch (part.part) {
      case "join":
        joins.push(joinRow(part, element, resolve));
        break;
      case "stretch":
        stretches.push({
          element,
          part,
          from: part.letters.map((letter) => resolve(`from/${letter}`)),
          to: (part.lettersBeyond ?? part.letters).map((letter) => resolve(`to/${letter}`)),
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
      case "alongside":
        break;
    }
  };
  parts.forEach((list, element) => {
    const resolve = resolverOf(element);
    for (const part of list) add(part, element, resolve);
  });
  return { joins: columnsOf(joins), stretches, units, branches, emfs };
}

/** What runs beside each span. */
function alongsideBySpan(
  parts: Circuit["parts"],
  spanOf: (element: number) => ElementId,
): ReadonlyMap<ElementId, readonly AlongsideAt[]> {
  const found = new Map<ElementId, AlongsideAt[]>();
  parts.forEach((list, element) => {
    for (const part of list)
      if (part.part === "alongside") {
        const span = spanOf(element);
        found.set(span, [...(found.get(span) ?? []), { ...part, element }]);
      }
  });
  return found;
}

/** Driven grounds of the points, by the nodes of their neutrals. */
export function rodsOf(
  system: System,
  pointIds: readonly PointId[],
  nodeOf: ReadonlyMap<ConductorId, number>,
): Circuit["rods"] {
  return pointIds.flatMap((id) => {
    const ohms = completePoint(system.points[id]!).earthOhms;
    const node = nodeOf.get(conductorId(id, "N"));
    return ohms === undefined || node === undefined ? [] : [{ node, ohms }];
  });
}

type JoinRow = ReturnType<typeof joinRow>;

const joinRow = (part: Join, element: number, resolve: (node: Node) => number) => ({
  from: resolve(part.from),
  to: resolve(part.to),
  common: part.common === undefined ? EARTH : resolve(part.common),
  ratio: part.ratio ?? 1,
  steps: part.ratio !== undefined,
  closed: part.closed,
  element,
  letter: LETTERS.indexOf(part.letter),
});

const columnsOf = (rows: readonly JoinRow[]): Joins => ({
  count: rows.length,
  from: Int32Array.from(rows, (it) => it.from),
  to: Int32Array.from(rows, (it) => it.to),
  common: Int32Array.from(rows, (it) => it.common),
  ratio: Float64Array.from(rows, (it) => it.ratio),
  steps: Uint8Array.from(rows, (it) => (it.steps ? 1 : 0)),
  closed: Uint8Array.from(rows, (it) => (it.closed ? 1 : 0)),
  element: Int32Array.from(rows, (it) => it.element),
  letter: Uint8Array.from(rows, (it) => it.letter),
});
