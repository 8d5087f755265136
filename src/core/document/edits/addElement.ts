import { type DeviceKind, deviceOf, type End } from "../../devices";
import { type JsonObject, refuse, say } from "../../terms";
import { completePoint } from "../complete";
import { conductorsOf } from "../conductors";
import { pointName } from "../names";
import { structureOf } from "../structures";
import type { SavedElement, StillhotDocument } from "../types";
import {
  type Edit,
  hasPoint,
  isId,
  nextElementId,
  nextId,
  nextPointId,
  plain,
  pointOf,
  putRecords,
} from "./change";
import { kindKey } from "../structureKinds";

/** Points at which a new element is to end, by the names of its ends. */
export type Ends = Readonly<Partial<Record<End, string>>>;

/**
 * Adds an element between points that exist, or at one.
 *
 * @param keys what it says of itself; without `phases` it takes those of its first point
 */
export const addElement =
  (kind: DeviceKind, ends: Ends, keys: JsonObject = {}): Edit =>
  (before) => {
    const missing = Object.values(ends).find((id) => !hasPoint(before, id));
    if (missing !== undefined) return refuse(say("edit.noPoint", { id: missing }));
    const id = nextElementId(before, kind);
    const record = newElement(before, kind, ends, keys);
    return putRecords(
      say("edit.addElement", { kind: say(`kind.${kind}`) }),
      before,
      { elements: { [id]: record } },
      { made: [id] },
    );
  };

/**
 * Grows the tap: a new point, and an element from a point that exists to it. The point stands on the structure of that
 * one, unless it stands on a new one.
 *
 * @param point     what the new point says of itself, with its place
 * @param structure what the new structure says of itself
 */
export const growFrom =
  (from: string, kind: DeviceKind, point: JsonObject, keys: JsonObject = {}, structure?: JsonObject): Edit =>
  (before) => {
    if (!hasPoint(before, from)) return refuse(say("edit.noPoint", { id: from }));
    const to = nextPointId(before);
    const id = nextElementId(before, kind);
    const record = newElement(before, kind, { from, to }, keys);
    const at = structure === undefined ? undefined : nextId("s", (it) => it === id || isId(before, it));
    const on = at === undefined ? standingWith(before, from, point) : { on: at };
    const label = say("edit.growFrom", { kind: say(`kind.${kind}`), from: pointName(before, from) });
    return putRecords(
      label,
      before,
      {
        ...(at === undefined ? {} : { structures: { [at]: plain(structure!) } }),
        points: { [to]: plain({ ...point, ...on }) },
        elements: { [id]: record },
      },
      { made: at === undefined ? [to, id] : [to, id, at] },
    );
  };

/** What a point says that stands with another one, unless it says itself what kind of place it is. */
function standingWith(before: StillhotDocument, from: string, point: JsonObject): JsonObject {
  const structure = structureOf(before.system, from);
  if (structure === undefined || point["kind"] !== undefined) return {};
  const { kind } = completePoint(pointOf(before, from)!);
  return {
    ...(structure.isDerived ? {} : { on: structure.id }),
    ...kindKey(kind),
  };
}

function newElement(before: StillhotDocument, kind: DeviceKind, ends: Ends, keys: JsonObject): SavedElement {
  const first = ends.from ?? ends.at ?? "";
  const there = (conductorsOf(before.system).get(first) ?? []).filter((it) => it !== "N").join("");
  const { fields, startsWith } = deviceOf(kind);
  const phases = "phases" in fields && there !== "" ? { phases: there } : {};
  return plain({ kind, ...phases, ...startsWith, ...ends, ...keys });
}
