import { deviceOf, type Fields } from "../../devices";
import { isObject, type JsonObject, refuse, type Refusal, say } from "../../terms";
import { isFileKey } from "../checkFields";
import { nameIn } from "../names";
import { pointFields } from "../types";
import { unlessCalledAlike } from "./calledAlike";
import { type Edit, elementOf, plain, pointOf, putRecords, withKeys } from "./change";

/** Sets keys of a point; `undefined` takes a key away, so that its default holds. */
export const setPointKeys =
  (id: string, keys: JsonObject): Edit =>
  (before) => {
    const point = pointOf(before, id);
    if (point === undefined) return refuse(say("edit.noPoint", { id }));
    return (
      refuseUnknown(pointFields, keys) ??
      unlessCalledAlike(
        before,
        id,
        keys,
        putRecords(say("edit.setKeys", { name: nameIn(before, id) }), before, {
          points: { [id]: withKeys(point, keys) },
        }),
      )
    );
  };

/**
 * Sets keys of an element; `undefined` takes a key away, so that its default holds. Fewer phases of its own leave
 * fewer to be open or parted, and a gang device stays whole.
 */
export const setElementKeys =
  (id: string, keys: JsonObject): Edit =>
  (before) => {
    const element = elementOf(before, id);
    if (element === undefined) return refuse(say("edit.noElement", { id }));
    const { fields } = deviceOf(element.kind);
    const record = withKeys(element, { ...trimmed(fields, element, keys), ...keys });
    return (
      refuseUnknown(fields, keys) ??
      unlessCalledAlike(
        before,
        id,
        keys,
        putRecords(say("edit.setKeys", { name: nameIn(before, id) }), before, { elements: { [id]: record } }),
      )
    );
  };

/** A refusal where keys are to be set that a record of this sort does not have. */
export function refuseUnknown(fields: Fields, keys: JsonObject): Refusal | undefined {
  const unknown = Object.keys(keys).find((key) => keys[key] !== undefined && !isFileKey(fields, key));
  return unknown === undefined ? undefined : refuse(say("edit.unknownKey", { key: unknown }));
}

/** What an element says of phases that it is about to lose. */
function trimmed(fields: Fields, element: JsonObject, { phases }: JsonObject): JsonObject {
  if (typeof phases !== "string") return {};
  const changes: Record<string, JsonObject[string]> = {};
  for (const [key, { input }] of Object.entries(fields)) {
    const value = element[key];
    if (input.as === "phases" && typeof value === "string") {
      const left = [...value].filter((it) => phases.includes(it) || it === "N").join("");
      if (left !== value) changes[key] = left === "" ? undefined : left;
    }
    if (input.as === "taps" && isObject(value))
      changes[key] = plain(Object.fromEntries(Object.entries(value).filter(([it]) => phases.includes(it))));
  }
  return changes;
}
