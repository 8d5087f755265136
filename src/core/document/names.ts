import { type JsonObject, type Message, type PointId, say } from "../terms";
import { completePoint } from "./complete";
import { elementsAt, endPointsOf, savedElement } from "./elementsAt";
import { perObject } from "./perObject";
import type { SavedElement, System } from "./types";

type Drawn = { readonly system: System };

/**
 * What a person calls an element: its label, or else what it is and where it stands, `tap clamp at pole 3`. Where that
 * could be another one too, what it is and its id: whoever takes one for the other gets hurt.
 */
export function elementName({ system }: Drawn, id: string): string | Message {
  const saved = Object.hasOwn(system.elements, id) ? savedElement(system.elements, id) : undefined;
  if (saved === undefined) return id;
  const label = labelOf(saved);
  if (label !== "") return label;
  const kind = say(`kind.${saved.kind}`);
  const [first, second] = [...new Set(endPointsOf(saved))];
  // A ground set goes by its number: the step that puts it on gave it one.
  if (first === undefined || saved.kind === "ground") return say("name.kind", { kind, id });
  if (!isLine(saved) && isOnlyOne(system, saved.kind, [first]))
    return say("name.at", { kind, place: pointName({ system }, first) });
  if (second !== undefined && isOnlyOne(system, saved.kind, [first, second]))
    return say("name.between", {
      kind,
      from: pointName({ system }, first),
      to: pointName({ system }, second),
    });
  return say("name.kind", { kind, id });
}

/** What a person calls a point: its label, or its kind and id. */
export function pointName({ system }: Drawn, id: string): string | Message {
  const saved = Object.hasOwn(system.points, id) ? system.points[id as PointId] : undefined;
  if (saved === undefined) return id;
  const { label, kind } = completePoint(saved);
  return label === "" ? say("name.kind", { kind: say(`kind.${kind}`), id }) : label;
}

/** What a person calls an element or a point. */
export const nameIn = (document: Drawn, id: string): string | Message =>
  Object.hasOwn(document.system.elements, id) ? elementName(document, id) : pointName(document, id);

/** What runs from one place to another stands at neither. */
const isLine = ({ kind }: SavedElement): boolean => kind === "span" || kind === "lead";

/** Whether one element only, with a label or without, is of this kind and has ends at all of these places. */
function isOnlyOne(system: System, kind: string, places: readonly string[]): boolean {
  const labels = pointsCalled(system.points);
  const isPlain = places.every((it) => (labels.get(labelOf(system.points[it as PointId])) ?? 1) === 1);
  const [first = [], ...others] = places.map((it) => elementsAt(system).get(it) ?? []);
  const such = first.filter(
    (id) => savedElement(system.elements, id)?.kind === kind && others.every((it) => it.includes(id)),
  );
  return isPlain && such.length === 1;
}

/** How many points have each label. */
const pointsCalled = perObject((points: System["points"]): ReadonlyMap<string, number> => {
  const count = new Map<string, number>();
  for (const point of Object.values(points)) {
    const label = labelOf(point);
    if (label !== "") count.set(label, (count.get(label) ?? 0) + 1);
  }
  return count;
});

const labelOf = (saved: JsonObject | undefined): string =>
  typeof saved?.["label"] === "string" ? saved["label"] : "";
