import { deviceOf, isBeside } from "../../devices";
import { isObject, type JsonObject, refuse, type Refusal, say } from "../../terms";
import { complete, completePoint, completeStructure } from "../complete";
import { naturalOrder } from "../naturalOrder";
import { parseJson } from "../parse";
import { structureOf } from "../structures";
import type { SavedElement, SavedPoint, SavedStructure, StillhotDocument } from "../types";
import { withFreshLabels } from "./calledAlike";
import {
  change,
  type Edit,
  elementOf,
  hasPoint,
  isId,
  nextId,
  plain,
  pointOf,
  put,
  withKeys,
} from "./change";
import type { Spot } from "../types";
import type { Things } from "./removeThings";

/** A piece of a drawing that can be put into a drawing. */
export interface Fragment {
  /** structures all of which are in it: part of one stays a part of the one that it is on */
  readonly structures?: Readonly<Record<string, SavedStructure>>;
  readonly points: Readonly<Record<string, SavedPoint>>;
  readonly elements: Readonly<Record<string, SavedElement>>;
}

/**
 * What is selected, as a fragment: with the points between which its elements lie, and with the elements between its
 * points. A one-ended element without its point stays at the point that it is at.
 */
export function copyOf(document: StillhotDocument, { points = [], elements = [] }: Things): Fragment {
  const takenPoints = new Set(points.filter((id) => hasPoint(document, id)));
  const takenElements = new Set(elements.filter((id) => elementOf(document, id) !== undefined));
  const endsOf = (saved: SavedElement) =>
    deviceOf(saved.kind).ends.map((end) => (complete(saved) as unknown as Record<string, string>)[end]!);
  for (const id of takenElements) {
    const ends = endsOf(elementOf(document, id)!);
    if (ends.length > 1) ends.forEach((point) => takenPoints.add(point));
  }
  for (const [id, saved] of Object.entries(document.system.elements)) {
    const ends = endsOf(saved);
    if (ends.length > 0 && ends.every((point) => points.includes(point))) takenElements.add(id);
  }
  const structures = wholeStructures(document, takenPoints);
  return {
    ...(Object.keys(structures).length === 0 ? {} : { structures }),
    points: Object.fromEntries([...takenPoints].sort(naturalOrder).map((id) => [id, pointOf(document, id)!])),
    elements: Object.fromEntries(
      [...takenElements].sort(naturalOrder).map((id) => [id, elementOf(document, id)!]),
    ),
  };
}

/** Structures of the file all of whose points are taken. */
function wholeStructures(
  { system }: StillhotDocument,
  taken: ReadonlySet<string>,
): Record<string, SavedStructure> {
  const all = [...new Set([...taken].map((it) => structureOf(system, it)!))];
  return Object.fromEntries(
    all
      .filter(({ isDerived, points }) => !isDerived && points.every((it) => taken.has(it)))
      .map(({ id }) => [id, system.structures![id]!]),
  );
}

/** A fragment as text for the clipboard. */
export const writeFragment = ({ structures, points, elements }: Fragment): string =>
  JSON.stringify({ structures, points, elements });

/** A fragment from text that came from anywhere; a whole file counts as a fragment of all that it draws. */
export function readFragment(text: string): Fragment | Refusal {
  const parsed = parseJson(text);
  const value = "value" in parsed && isObject(parsed.value) ? parsed.value : undefined;
  const system = isObject(value?.["system"]) ? value["system"] : value;
  const { structures = {}, points = {}, elements } = system ?? {};
  // What the records say is judged where they are pasted, by the reader.
  return isObject(points) &&
    isObject(elements) &&
    isObject(structures) &&
    [points, elements, structures].every((map) => Object.values(map).every(isObject))
    ? ({ structures, points, elements } as unknown as Fragment)
    : refuse(say("edit.noFragment"));
}

/**
 * Puts a fragment into the drawing, moved by an offset; an id that is taken becomes the next free one like it, and so does
 * a label.
 *
 * @param onto points of the fragment that are points of the drawing, by their ids in both: they stay as they are there
 */
export const paste = (
  fragment: Fragment,
  by: Spot = { x: 0, y: 0 },
  onto: ReadonlyMap<string, string> = new Map(),
): Edit => withFreshLabels(pasted(fragment, by, onto));

const pasted =
  (
    { structures: poles = {}, points: all, elements }: Fragment,
    by: Spot,
    onto: ReadonlyMap<string, string>,
  ): Edit =>
  (before) => {
    const points = Object.fromEntries(Object.entries(all).filter(([id]) => !onto.has(id)));
    // What joins a point of the drawing stands where that one stands.
    const joined = new Map(
      [...onto].map(([id, at]) => [all[id]?.["on"], structureOf(before.system, at)] as const),
    );
    const structures = Object.fromEntries(
      Object.entries(poles).filter(
        ([id]) => !joined.has(id) && Object.values(points).some((it) => it["on"] === id),
      ),
    );
    const structureIds = renamed(
      Object.keys(structures),
      (id) => isId(before, id) || Object.hasOwn(points, id) || Object.hasOwn(elements, id),
    );
    const isStructure = (id: string) =>
      Object.hasOwn(before.system.structures ?? {}, id) || [...structureIds.values()].includes(id);
    const pointIds = renamed(Object.keys(points), (id) => hasPoint(before, id) || isStructure(id));
    const elementIds = renamed(
      Object.keys(elements),
      (id) => elementOf(before, id) !== undefined || isStructure(id),
    );
    const count = pointIds.size + elementIds.size;
    const standsOn = (id: string): string | undefined => {
      const at = joined.get(id);
      if (at !== undefined) return at.isDerived ? undefined : at.id;
      return structureIds.get(id) ?? (Object.hasOwn(before.system.structures ?? {}, id) ? id : undefined);
    };
    const standing = <Saved extends JsonObject>(record: Saved): Saved =>
      typeof record["on"] === "string" ? withKeys(record, { on: standsOn(record["on"]) }) : record;
    return change(
      say("edit.paste", { count }),
      before,
      (draft) => {
        for (const [id, structure] of Object.entries(structures))
          put((draft.system.structures ??= {}), structureIds.get(id)!, besideItself(plain(structure), by));
        for (const [id, point] of Object.entries(points)) {
          const { x, y } = completePoint(point);
          put(
            draft.system.points,
            pointIds.get(id)!,
            standing(withKeys(plain(point), { x: x + by.x, y: y + by.y })),
          );
        }
        for (const [id, element] of Object.entries(elements))
          put(
            draft.system.elements,
            elementIds.get(id)!,
            standing(reattached(plain(element), new Map([...pointIds, ...onto]), elementIds)),
          );
      },
      { made: [...structureIds.values(), ...pointIds.values(), ...elementIds.values()] },
    );
  };

/** What was seen on one pole is not seen on its copy. A structure that a person placed has its copy beside it. */
function besideItself(structure: SavedStructure, by: Spot): SavedStructure {
  const { x, y } = completeStructure(structure);
  const place = x === undefined || y === undefined ? {} : { x: x + by.x, y: y + by.y };
  return withKeys(structure, { ...place, evidence: undefined, seenOn: undefined });
}

/** Copies what is selected, beside itself. */
export const duplicate =
  (things: Things, by: Spot): Edit =>
  (before) =>
    paste(copyOf(before, things), by)(before);

type Names = ReadonlyMap<string, string>;

function renamed(ids: readonly string[], isTaken: (id: string) => boolean): Names {
  const names = new Map<string, string>();
  const given = new Set<string>();
  for (const id of [...ids].sort(naturalOrder)) {
    const isUsed = (it: string) => isTaken(it) || given.has(it);
    const name = isUsed(id) ? nextId(stemOf(id), (it) => isUsed(it) || (it !== id && ids.includes(it))) : id;
    names.set(id, name);
    given.add(name);
  }
  return names;
}

/** An id without its number, short enough that another number fits. */
const stemOf = (id: string): string => id.replace(/\d+$/, "").slice(0, 30) || "p";

function reattached(element: SavedElement, points: Names, elements: Names): SavedElement {
  const changes: Record<string, string> = {};
  for (const [key, names] of [
    ["from", points],
    ["to", points],
    ["alt", points],
    ["at", points],
    ["span", elements],
  ] as const) {
    const id = element[key];
    const isReference = key === "span" ? isBeside(element) : isEnd(element, key);
    if (isReference && typeof id === "string" && names.has(id)) changes[key] = names.get(id)!;
  }
  return withKeys(element, changes);
}

/** A ground set's `to` names no point. */
const isEnd = ({ kind }: SavedElement, key: "from" | "to" | "alt" | "at"): boolean =>
  (deviceOf(kind)?.ends ?? []).includes(key);
