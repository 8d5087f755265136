import { type DeviceKind, deviceOf, type End } from "../../devices";
import { type JsonObject, refuse, say } from "../../terms";
import { conductorsOf } from "../conductors";
import type { SavedElement, StillhotDocument } from "../types";
import { type Command, hasPoint, nextElementId, nextPointId, plain, putRecords } from "./change";

export type Ends = Readonly<Partial<Record<End, string>>>;

/**
 * Adds an element between points that exist, or at one.
 *
 * @param keys what it says of itself; without `phases` it takes those of its first point
 */
export const addElement =
  (kind: DeviceKind, ends: Ends, keys: JsonObject = {}): Command =>
  (before) => {
    const missing = Object.values(ends).find((id) => !hasPoint(before, id));
    if (missing !== undefined) return refuse(say("edit.noPoint", { id: missing }));
    const id = nextElementId(before, kind);
    const record = newElement(before, kind, ends, keys);
    return putRecords(say("edit.addElement", { id }), before, { elements: { [id]: record } }, { made: [id] });
  };

/**
 * Grows the tap: a new point, and an element from a point that exists to it.
 *
 * @param point what the new point says of itself, with its place
 */
export const growFrom =
  (from: string, kind: DeviceKind, point: JsonObject, keys: JsonObject = {}): Command =>
  (before) => {
    if (!hasPoint(before, from)) return refuse(say("edit.noPoint", { id: from }));
    const to = nextPointId(before);
    const id = nextElementId(before, kind);
    const record = newElement(before, kind, { from, to }, keys);
    const records = { points: { [to]: plain(point) }, elements: { [id]: record } };
    return putRecords(say("edit.growFrom", { id, from }), before, records, { made: [to, id] });
  };

function newElement(before: StillhotDocument, kind: DeviceKind, ends: Ends, keys: JsonObject): SavedElement {
  const first = ends.from ?? ends.at ?? "";
  const there = (conductorsOf(before.system).get(first) ?? []).filter((it) => it !== "N").join("");
  const { fields, startsWith } = deviceOf(kind);
  const phases = "phases" in fields && there !== "" ? { phases: there } : {};
  return plain({ kind, ...phases, ...startsWith, ...ends, ...keys }) as SavedElement;
}
