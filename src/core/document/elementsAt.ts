import { deviceOf, isDeviceKind } from "../devices";
import { type TouchedRecords, perDrawing } from "./touched";
import type { SavedElement, SavedPoint, System } from "./types";

/** Ids of the points that an element as saved names as its ends, whether or not they exist: asked more than all else. */
export function endPointsOf(saved: SavedElement | undefined): readonly string[] {
  if (saved === undefined || !isDeviceKind(saved.kind)) return [];
  const points: string[] = [];
  for (const end of deviceOf(saved.kind).ends) {
    const point = saved[end];
    if (typeof point === "string") points.push(point);
  }
  return points;
}

/** Ids of the elements at every point, in the order of the drawing. */
export const elementsAt: (system: System) => ReadonlyMap<string, readonly string[]> = perDrawing<
  ReadonlyMap<string, readonly string[]>
>(
  ({ elements }) => {
    const at = new Map<string, string[]>();
    for (const id in elements)
      for (const point of new Set(endPointsOf(savedElement(elements, id)))) {
        const list = at.get(point);
        if (list === undefined) at.set(point, [id]);
        else list.push(id);
      }
    return at;
  },
  (was, before, after, { elements }) => {
    const moved = [...elements].filter((id) => {
      const [had, has] = [before, after].map((it) => endPointsOf(savedElement(it.elements, id)).join());
      return had !== has || !isIn(before, id) || !isIn(after, id);
    });
    if (moved.length === 0) return was;
    // One that comes to another point stands there in the drawing's order, which is not told from here.
    if (moved.some((id) => isIn(before, id) && isIn(after, id))) return undefined;
    const at = new Map(was);
    for (const id of moved) {
      const ends = new Set([
        ...endPointsOf(savedElement(before.elements, id)),
        ...endPointsOf(savedElement(after.elements, id)),
      ]);
      for (const point of ends) {
        const others = (at.get(point) ?? []).filter((it) => it !== id);
        at.set(point, isIn(after, id) ? [...others, id] : others);
      }
    }
    return at;
  },
);

/** How many records a drawing has of one sort; counted once, for ten thousand take a part of a frame. */
const countOf = (sort: "points" | "elements") =>
  perDrawing<number>(
    (system) => Object.keys(system[sort]).length,
    (was, before, after, touched) =>
      [...touched[sort]].reduce(
        (count, id) =>
          count + Number(Object.hasOwn(after[sort], id)) - Number(Object.hasOwn(before[sort], id)),
        was,
      ),
  );

/** How many elements a system has; carried over from the system before an edit. */
export const elementCountOf: (system: System) => number = countOf("elements");

/** How many points a system has; carried over from the system before an edit. */
export const pointCountOf: (system: System) => number = countOf("points");

/** Every point that was touched, or at which an element that was touched has an end, before or after it. */
export function pointsAround(
  before: System,
  after: System,
  { points, elements }: TouchedRecords,
): Set<string> {
  const around = new Set(points);
  for (const id of elements)
    for (const { elements: those } of [before, after])
      for (const point of endPointsOf(savedElement(those, id))) around.add(point);
  return around;
}

const isIn = ({ elements }: System, id: string): boolean => Object.hasOwn(elements, id);

/** An element as saved, or nothing where the id names none. */
export const savedElement = (elements: System["elements"], id: string): SavedElement | undefined =>
  Object.hasOwn(elements, id) ? (elements as Readonly<Record<string, SavedElement>>)[id] : undefined;

/** A point as saved, or nothing where the id names none. */
export const savedPoint = (points: System["points"], id: string): SavedPoint | undefined =>
  Object.hasOwn(points, id) ? (points as Readonly<Record<string, SavedPoint>>)[id] : undefined;
