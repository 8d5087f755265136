import { deviceOf, type Evidence, isLine } from "../devices";
import type { ElementId, PointId, StructureId } from "../terms";
import { complete, completePoint, completeStructure } from "./complete";
import { elementsAt, endPointsOf, savedElement, savedPoint } from "./elementsAt";
import { hopsFromSource } from "./hops";
import { naturalOrder } from "./naturalOrder";
import { type TouchedRecords, perDrawing } from "./touched";
import type { StructureRecord, System } from "./types";

/** What people stand at: a pole, a pad, a vault, a station or a house, with what is on it. */
export interface Structure extends StructureRecord {
  /** its own in the file; a derived one has the id of its point nearest the source */
  readonly id: StructureId;
  /** the file names none here: it follows from what joins its points */
  readonly isDerived: boolean;
  /** nearest the source first */
  readonly points: readonly PointId[];
  /** in the order of the drawing */
  readonly elements: readonly ElementId[];
}

/**
 * Every structure of a drawing, those of the file in its order and then the derived ones. Points that say `on` are on
 * that one. Others are on the one with whose points anything but a span joins them, both of one kind: a cutout's top and
 * its bottom are one pole, a meter between a pole and a house joins two places. Nothing electrical depends on it.
 */
export const structuresOf = (system: System): ReadonlyMap<StructureId, Structure> => indexOf(system).all;

/** The structure that an id means: its own, or that of a point or a device on it; nothing for what is on none. */
export function structureOf(system: System, id: string): Structure | undefined {
  const { all, ofPoint, ofElement } = indexOf(system);
  return all.get((ofPoint.get(id) ?? ofElement.get(id) ?? id) as StructureId);
}

/** The structure that a point is on; nothing for a point that there is not. */
export const structureOfPoint = (system: System, point: string): Structure | undefined => {
  const { all, ofPoint } = indexOf(system);
  return all.get(ofPoint.get(point)!);
};

/** The structure that an element is on; nothing where it stands between two, as a line does. */
export const structureOfElement = (system: System, element: string): Structure | undefined => {
  const { all, ofElement } = indexOf(system);
  return all.get(ofElement.get(element)!);
};

/** Whether two points are on one structure, or a point on the structure that the other id names. */
export const isSameStructure = (system: System, a: string, b: string): boolean => {
  const { all, ofPoint } = indexOf(system);
  const one = ofPoint.get(a) ?? a;
  return all.has(one as StructureId) && one === (ofPoint.get(b) ?? b);
};

/** Every point on the structure of one, itself too. */
export const pointsOnStructure = (system: System, point: string): readonly PointId[] =>
  structureOf(system, point)?.points ?? [];

/**
 * How something is known: as it says itself, else as its structure was found by whoever stood there.
 *
 * @param id of an element or a point of the drawing
 */
export function evidenceOf(system: System, id: string): Evidence {
  const element = savedElement(system.elements, id);
  const own = element ?? savedPoint(system.points, id)!;
  const isTold = own["evidence"] !== undefined || system.structures === undefined;
  const structure = isTold ? undefined : structureOf(system, id);
  if (structure?.isDerived === false) return structure.evidence;
  return (element === undefined ? completePoint(own) : complete(element)).evidence;
}

/** Whether somebody stood before a thing or a point and saw it. */
export const isSeen = (system: System, id: string): boolean => evidenceOf(system, id) === "seen";

/** How all that is on a structure is known, where it is all known in one way; nothing where it is not. */
export function evidenceOfAll(system: System, { points, elements }: Structure): Evidence | undefined {
  const [first, ...others] = [...points, ...elements].map((it) => evidenceOf(system, it));
  return others.every((it) => it === first) ? first : undefined;
}

/** The structures that one has an element in common with. */
export function structuresAround(system: System, { id, points }: Structure): readonly Structure[] {
  const around = new Set<Structure>();
  for (const point of points)
    for (const element of elementsAt(system).get(point) ?? [])
      for (const end of endPointsOf(savedElement(system.elements, element))) {
        const there = structureOfPoint(system, end);
        if (there !== undefined && there.id !== id) around.add(there);
      }
  return [...around];
}

/** Of more points and devices than these on one structure nobody could make out one: it is told as one thing. */
export const MOST_TOLD_APART = 300;

/** Whether so much is on a structure that a picture cannot show it thing by thing. */
export const isCrowded = ({ points, elements }: Structure): boolean =>
  points.length + elements.length > MOST_TOLD_APART;

/** A label; none where it is nothing but spaces: who reads it out says nothing. */
export const readable = (label: string): string => (label.trim() === "" ? "" : label);

interface Index {
  readonly all: ReadonlyMap<StructureId, Structure>;
  readonly ofPoint: ReadonlyMap<string, StructureId>;
  readonly ofElement: ReadonlyMap<string, StructureId>;
}

const indexOf: (system: System) => Index = perDrawing<Index>(buildIndex, (was, before, after, touched) =>
  isUnmoved(before, after, touched) ? was : undefined,
);

/** Whether what an edit touched stands where it stood: then every structure is as it was. */
function isUnmoved(before: System, after: System, { structures, points, elements }: TouchedRecords): boolean {
  if (structures.size > 0) return false;
  const standsAlike = (text: (system: System) => string): boolean => text(before) === text(after);
  return (
    [...points].every((id) => standsAlike((it) => JSON.stringify(savedPoint(it.points, id) ?? null))) &&
    [...elements].every((id) => standsAlike((it) => joining(it, id)))
  );
}

/** What of an element says where it stands and what it joins. */
function joining({ elements }: System, id: string): string {
  const saved = savedElement(elements, id);
  return saved === undefined ? "" : [saved.kind, saved["on"], ...endPointsOf(saved)].join();
}

function buildIndex(system: System): Index {
  const inOrder = nearestFirst(system);
  const ofPoint = placed(system, inOrder);
  const points = new Map<StructureId, PointId[]>();
  for (const id of Object.keys(system.structures ?? {})) points.set(id as StructureId, []);
  for (const point of inOrder) {
    const id = ofPoint.get(point)!;
    const its = points.get(id);
    if (its === undefined) points.set(id, [point]);
    else its.push(point);
  }
  const elements = new Map<StructureId, ElementId[]>([...points.keys()].map((id) => [id, []]));
  const ofElement = new Map<string, StructureId>();
  for (const id of Object.keys(system.elements) as ElementId[]) {
    const on = standingOn(system, id, ofPoint);
    if (on === undefined) continue;
    ofElement.set(id, on);
    elements.get(on)!.push(id);
  }
  const all = new Map(
    [...points].map(([id, its]) => [
      id,
      { ...recordOf(system, id, its), id, points: its, elements: elements.get(id)! },
    ]),
  );
  return { all, ofPoint, ofElement };
}

function nearestFirst(system: System): PointId[] {
  const hops = hopsFromSource(system);
  const ids = Object.keys(system.points) as PointId[];
  return ids
    .map((id) => ({ id, far: hops.get(id) ?? Number.MAX_VALUE }))
    .sort((a, b) => a.far - b.far || naturalOrder(a.id, b.id))
    .map(({ id }) => id);
}

/** The structure of every point: first what the file says, then what is joined to that, then each heap that is left. */
function placed(system: System, points: readonly PointId[]): Map<string, StructureId> {
  const on = new Map<string, StructureId>();
  for (const id of points) {
    const said = completePoint(system.points[id]!).on;
    if (isNamed(system, said)) on.set(id, said);
  }
  spread(system, on, [...on.keys()]);
  for (const id of points)
    if (!on.has(id)) {
      on.set(id, id as string as StructureId);
      spread(system, on, [id]);
    }
  return on;
}

/** Takes points that are on nothing yet onto the structure of the points that they are joined to. */
function spread(system: System, on: Map<string, StructureId>, starts: readonly string[]): void {
  const queue = [...starts];
  for (let next = 0; next < queue.length; next++) {
    const here = queue[next]!;
    const structure = on.get(here)!;
    const kind = kindAt(system, here, structure);
    for (const id of elementsAt(system).get(here) ?? [])
      for (const far of endsTogether(system, id))
        if (!on.has(far) && completePoint(savedPoint(system.points, far)!).kind === kind) {
          on.set(far, structure);
          queue.push(far);
        }
  }
}

const isNamed = ({ structures = {} }: System, id: unknown): id is StructureId =>
  typeof id === "string" && Object.hasOwn(structures, id);

/** The kind of place a point is: its own, or that of its structure where it says nothing. */
function kindAt(system: System, point: string, structure: StructureId): string {
  const saved = savedPoint(system.points, point)!;
  return saved["kind"] === undefined && isNamed(system, structure)
    ? completeStructure(system.structures![structure]!).kind
    : completePoint(saved).kind;
}

/** Points that an element holds together: all its ends, unless it is a length of line. */
function endsTogether({ elements, points }: System, id: string): readonly string[] {
  const saved = savedElement(elements, id)!;
  if (isLine(saved) || deviceOf(saved.kind).ends.length < 2) return [];
  return endPointsOf(saved).filter((it) => Object.hasOwn(points, it));
}

/** The structure that an element says it is on, or the one that all its ends are on. */
function standingOn(
  system: System,
  id: string,
  ofPoint: ReadonlyMap<string, StructureId>,
): StructureId | undefined {
  const saved = savedElement(system.elements, id)!;
  const { on: said } = complete(saved) as { readonly on?: unknown };
  if (isNamed(system, said)) return said;
  const [first, ...others] = endPointsOf(saved).map((it) => ofPoint.get(it));
  return others.every((it) => it === first) ? first : undefined;
}

/** What is said of a structure: by the file, or by the points of a derived one, the nearest of them that has a label. */
function recordOf(
  system: System,
  id: StructureId,
  its: readonly PointId[],
): StructureRecord & Pick<Structure, "isDerived"> {
  if (isNamed(system, id)) {
    const record = completeStructure(system.structures![id]!);
    return { ...record, label: readable(record.label), isDerived: false };
  }
  const [nearest, ...others] = its.map((it) => completePoint(system.points[it]!));
  const { kind, x, y, evidence } = nearest!;
  const label = [nearest!, ...others].find((it) => readable(it.label) !== "")?.label ?? "";
  return { label, kind, x, y, evidence, seenOn: "", condition: undefined, note: "", isDerived: true };
}
