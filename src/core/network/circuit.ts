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
import {
  besideOthers,
  complete,
  completePoint,
  conductorsOf,
  perObject,
  type SavedElement,
  type System,
  touchedSince,
} from "../document";
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
  /** 1 where the ratio can be other than 1 */
  readonly steps: Uint8Array;
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
export function placeFor(
  circuit: Pick<Circuit, "system" | "nodeOf" | "nominalVolts" | "elementIds">,
  index: number,
): Place {
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

/** Parts of an element in its place; asked of the device once. */
function rememberedParts(saved: SavedElement, element: CircuitElement, place: Place): readonly Part[] {
  const key = told(place, element);
  const known = knownParts.get(saved);
  if (known !== undefined && known.told === key) return known.parts;
  const parts = deviceOf(element.kind).parts(element as never, place);
  knownParts.set(saved, { told: key, parts });
  return parts;
}

/** Parts of one element of a circuit, as it now stands. */
function partsOfElement(circuit: Circuit, index: number): readonly Part[] {
  const saved = circuit.system.elements[circuit.elementIds[index]!]!;
  return rememberedParts(saved, complete(saved), placeFor(circuit, index));
}

const circuits = new WeakMap<System, Circuit>();

/** The circuit asked for last: an edit nearly always leaves all but one element alone, and its circuit is made from this one. */
let last: Circuit | undefined;

/** The circuit of a system; remembered, and carried over from the last one where only settings of a few elements differ. */
export const circuitOf = (system: System): Circuit =>
  circuitAtHand(system) ?? remembered(buildCircuit(system));

/** The circuit of a system where none has to be built anew for it, which takes longer than a frame. */
export const circuitAtHand = (system: System): Circuit | undefined => {
  const known = circuits.get(system);
  if (known !== undefined) return known;
  const carried = last === undefined ? undefined : carriedOver(last, system);
  return carried === undefined ? undefined : remembered(carried);
};

function remembered(circuit: Circuit): Circuit {
  circuits.set(circuit.system, circuit);
  last = circuit;
  return circuit;
}

/** Above so many changed elements building anew is as quick. */
const MOST_CARRIED_OVER = 40;

/** Indices of the elements that differ from a circuit's; undefined where that is not all that does. */
function changedElements(before: Circuit, system: System): number[] | undefined {
  if (system.frequencyHz !== before.frequencyHz) return undefined;
  const touched = touchedSince((it) => it === before.system, system);
  const changed =
    touched === undefined
      ? comparedElements(before, system)
      : [...touched.points].every((id) => isSameRod(before.system, system, id))
        ? indicesOf(before, system, touched.elements)
        : undefined;
  return changed === undefined || changed.length > MOST_CARRIED_OVER ? undefined : changed;
}

function comparedElements(before: Circuit, system: System): number[] | undefined {
  const { elementIds } = before;
  if (system.points !== before.system.points) return undefined;
  if (Object.keys(system.elements).length !== elementIds.length) return undefined;
  const changed: number[] = [];
  for (let index = 0; index < elementIds.length; index++) {
    const id = elementIds[index]!;
    const saved = system.elements[id];
    if (saved === undefined) return undefined;
    if (saved !== before.system.elements[id]) changed.push(index);
  }
  return changed;
}

/** A point that only moved, or has another name, is nothing to its circuit. */
function isSameRod(before: System, after: System, id: string): boolean {
  const [was, is] = [before, after].map(({ points }) =>
    Object.hasOwn(points, id) ? completePoint(points[id as PointId]!) : undefined,
  );
  return was !== undefined && is !== undefined && was.earthOhms === is.earthOhms;
}

const indexOfElements = perObject(
  (elementIds: Circuit["elementIds"]) => new Map(elementIds.map((id, index) => [id as string, index])),
);

function indicesOf(before: Circuit, system: System, ids: ReadonlySet<string>): number[] | undefined {
  const indices: number[] = [];
  for (const id of ids) {
    const index = indexOfElements(before.elementIds).get(id);
    if (index === undefined || !Object.hasOwn(system.elements, id)) return undefined;
    indices.push(index);
  }
  return indices;
}

/**
 * The circuit of a system that differs from another's only in what is open, on or rated of a few elements, or undefined
 * where nodes or nominal volts could differ.
 */
function carriedOver(before: Circuit, system: System): Circuit | undefined {
  const { elementIds } = before;
  const changed = changedElements(before, system);
  if (changed === undefined) return undefined;
  const parts = before.parts.slice();
  for (const index of changed) {
    const was = complete(before.system.elements[elementIds[index]!]!);
    const is = complete(system.elements[elementIds[index]!]!);
    if (!standsAlike(was, is) || (is.kind === "span" && hasNearby(before))) return undefined;
    const fresh = partsOfElement({ ...before, system }, index);
    if (!lieAlike(before.parts[index]!, fresh)) return undefined;
    parts[index] = fresh;
  }
  const otherwise = changed.filter((index) => !saysTheSame(before.parts[index]!, parts[index]!));
  return otherwise.length === 0
    ? { ...before, system }
    : { ...withParts(before, system, parts, otherwise), values: {} };
}

/** A label or a place on the paper is nothing to a circuit. */
const saysTheSame = (was: readonly Part[], is: readonly Part[]): boolean =>
  JSON.stringify(was) === JSON.stringify(is);

const hasNearby = ({ system }: Circuit): boolean => besideOthers(system).length > 0;

/** Whether an element still hangs on the same conductors and says the same of nominal volts. */
function standsAlike(was: CircuitElement, is: CircuitElement): boolean {
  if (was.kind !== is.kind || was.kind === "nearby" || is.kind === "nearby") return false;
  const keys = (element: CircuitElement): string => {
    const { from, to, at, alt, phases, kvLL, volts, primaryKv, secondaryV } = element as unknown as Record<
      string,
      unknown
    >;
    return [from, to, at, alt, phases, kvLL, volts, primaryKv, secondaryV].join();
  };
  const brings = (element: CircuitElement): string =>
    deviceOf(element.kind)
      .brings(element as never)
      .join();
  return keys(was) === keys(is) && brings(was) === brings(is);
}

/** Whether two lists of parts join the same nodes in the same order. */
const lieAlike = (was: readonly Part[], is: readonly Part[]): boolean => layOf(was) === layOf(is);

const layOf = (parts: readonly Part[]): string =>
  parts
    .map((part) => {
      switch (part.part) {
        case "join":
          return `join ${part.from} ${part.to} ${part.common ?? ""}`;
        case "stretch":
          return `stretch ${part.letters.join("")}`;
        case "unit":
          return `unit ${[...part.primary, ...part.secondary].map(({ plus, minus }) => `${plus} ${minus}`).join()}`;
        case "branch":
          return `branch ${part.role} ${part.from} ${part.to}`;
        case "emf":
          return `emf ${part.legs.map(({ node }) => node).join()} ${part.star}`;
        case "alongside":
          return "alongside";
      }
    })
    .join(";");

/** The rows of an element in each of a circuit's columns. */
interface Rows {
  readonly join: number[];
  readonly stretch: number[];
  readonly unit: number[];
  readonly branch: number[];
  readonly emf: number[];
}

const rowsByElement = new WeakMap<object, ReadonlyMap<number, Rows>>();

/** Where the parts of each element stand; the same for circuits that lie alike. */
function rowsOf({ structure, joins, stretches, units, branches, emfs }: Circuit): ReadonlyMap<number, Rows> {
  const known = rowsByElement.get(structure);
  if (known !== undefined) return known;
  const rows = new Map<number, Rows>();
  const add = (element: number, column: keyof Rows, row: number) => {
    let own = rows.get(element);
    if (own === undefined)
      rows.set(element, (own = { join: [], stretch: [], unit: [], branch: [], emf: [] }));
    own[column].push(row);
  };
  joins.element.forEach((element, row) => add(element, "join", row));
  stretches.forEach(({ element }, row) => add(element, "stretch", row));
  units.forEach(({ element }, row) => add(element, "unit", row));
  branches.forEach(({ element }, row) => add(element, "branch", row));
  emfs.forEach(({ element }, row) => add(element, "emf", row));
  rowsByElement.set(structure, rows);
  return rows;
}

/** A circuit with other parts in the same places. */
function withParts(
  before: Circuit,
  system: System,
  parts: Circuit["parts"],
  changed: readonly number[],
): Circuit {
  const closed = before.joins.closed.slice();
  const ratio = before.joins.ratio.slice();
  const [stretches, units, branches, emfs] = [
    before.stretches.slice(),
    before.units.slice(),
    before.branches.slice(),
    before.emfs.slice(),
  ];
  for (const element of changed) {
    const rows = rowsOf(before).get(element);
    if (rows === undefined) continue;
    // Columns keep the order of an element's list of parts.
    const own = <Kind extends Part["part"]>(kind: Kind) =>
      parts[element]!.filter((it): it is Extract<Part, { part: Kind }> => it.part === kind);
    own("join").forEach((join, nth) => {
      closed[rows.join[nth]!] = join.closed ? 1 : 0;
      ratio[rows.join[nth]!] = join.ratio ?? 1;
    });
    replace(stretches, rows.stretch, own("stretch"));
    replace(units, rows.unit, own("unit"));
    replace(branches, rows.branch, own("branch"));
    replace(emfs, rows.emf, own("emf"));
  }
  return {
    ...before,
    system,
    parts,
    joins: { ...before.joins, closed, ratio },
    stretches,
    units,
    branches,
    emfs,
  };
}

function replace<Row extends { readonly part: Part }>(
  column: Row[],
  rows: readonly number[],
  parts: readonly Row["part"][],
): void {
  parts.forEach((part, nth) => (column[rows[nth]!] = { ...column[rows[nth]!]!, part }));
}

function buildCircuit(system: System): Circuit {
  const pointIds = Object.keys(system.points) as PointId[];
  const elementIds = Object.keys(system.elements) as ElementId[];
  const saved = elementIds.map((id) => system.elements[id]!);
  const elements = saved.map(complete);
  const letters = conductorsOf(system);

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
  const parts = elements.map((element, index) =>
    rememberedParts(saved[index]!, element, placeOf(system, element, nodeAt, nominalVolts)),
  );

  const joins: {
    from: number;
    to: number;
    common: number;
    ratio: number;
    steps: boolean;
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
    rods,
    joins: {
      count: joins.length,
      from: Int32Array.from(joins, (it) => it.from),
      to: Int32Array.from(joins, (it) => it.to),
      common: Int32Array.from(joins, (it) => it.common),
      ratio: Float64Array.from(joins, (it) => it.ratio),
      steps: Uint8Array.from(joins, (it) => (it.steps ? 1 : 0)),
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
  steps: part.ratio !== undefined,
  closed: part.closed,
  element,
  letter: LETTERS.indexOf(part.letter),
});
