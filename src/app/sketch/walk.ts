import {
  complete,
  type ElementId,
  type Owner,
  type PointId,
  type StillhotDocument,
  structureOf,
} from "../../core";
import { outlineOf } from "../words/outline";

/** The ways that the arrow keys go: along the circuit, not across the screen. */
export type WalkDirection = "onward" | "back" | "sibling" | "siblingBefore" | "source" | "end";

/** Where a way leads from a thing; the thing itself where it leads nowhere. */
export function walk(
  document: StillhotDocument,
  from: Owner | undefined,
  way: WalkDirection,
): Owner | undefined {
  const rows = outlineOf(document);
  if (rows.length === 0) return undefined;
  const first = firstOf(document, rows[0]!.owner);
  if (from === undefined || !isThere(document, from)) return first;
  const owner = firstOf(document, from);
  switch (way) {
    case "onward":
      return onward(document, owner) ?? owner;
    case "back":
      return back(document, owner) ?? owner;
    case "source":
      return first;
    case "end": {
      let at = owner;
      const seen = new Set<string>();
      for (
        let next = onward(document, at);
        next !== undefined && !seen.has(next.id);
        next = onward(document, at)
      ) {
        seen.add(next.id);
        at = next;
      }
      return at;
    }
    case "sibling":
    case "siblingBefore": {
      const step = way === "sibling" ? 1 : -1;
      const siblings = siblingsOf(document, owner);
      const own = siblings.findIndex((it) => it.id === owner.id);
      const index = rows.findIndex((it) => it.owner.of === from.of && it.owner.id === from.id);
      return siblings[(own + step + siblings.length) % siblings.length] ?? rows[index + step]?.owner ?? owner;
    }
  }
}

/** A structure is walked from its point nearest the source; whatever else is walked as it is. */
function firstOf({ system }: StillhotDocument, owner: Owner): Owner {
  const [point] = owner.of === "structure" ? (structureOf(system, owner.id)?.points ?? []) : [];
  return point === undefined ? owner : { of: "point", id: point };
}

function isThere({ system }: StillhotDocument, { of, id }: Owner): boolean {
  if (of === "structure") return structureOf(system, id) !== undefined;
  return Object.hasOwn(of === "point" ? system.points : system.elements, id);
}

const elementOf = (document: StillhotDocument, id: string) =>
  complete(document.system.elements[id as ElementId]!);

function elementsAt(document: StillhotDocument, point: string, end: "from" | "to"): ElementId[] {
  return (Object.keys(document.system.elements) as ElementId[]).filter((id) => {
    const element = elementOf(document, id);
    if ("from" in element)
      return element[end] === point || (end === "to" && "alt" in element && element.alt === point);
    return end === "from" && "at" in element && element.at === point;
  });
}

/** Away from the source: from a point to what leaves it, from an element to its far end. */
function onward(document: StillhotDocument, { of, id }: Owner): Owner | undefined {
  if (of === "element") {
    const element = elementOf(document, id);
    return "from" in element ? { of: "point", id: element.to as PointId } : undefined;
  }
  const next = elementsAt(document, id, "from").find((it) => "from" in elementOf(document, it));
  const hung = elementsAt(document, id, "from")[0];
  return next !== undefined
    ? { of: "element", id: next }
    : hung === undefined
      ? undefined
      : { of: "element", id: hung };
}

/** Toward the source. */
function back(document: StillhotDocument, { of, id }: Owner): Owner | undefined {
  if (of === "element") {
    const element = elementOf(document, id);
    const near = "from" in element ? element.from : "at" in element ? element.at : undefined;
    return near === undefined ? undefined : { of: "point", id: near as PointId };
  }
  const [before] = elementsAt(document, id, "to");
  return before === undefined ? undefined : { of: "element", id: before };
}

/** What leaves the same point. */
function siblingsOf(document: StillhotDocument, owner: Owner): Owner[] {
  if (owner.of !== "element") return [];
  const element = elementOf(document, owner.id);
  const near = "from" in element ? element.from : "at" in element ? element.at : undefined;
  return near === undefined ? [] : elementsAt(document, near, "from").map((id) => ({ of: "element", id }));
}
