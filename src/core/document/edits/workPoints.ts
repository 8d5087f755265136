import { isObject, type JsonObject, refuse, say } from "../../terms";
import { isFileKey } from "../checkFields";
import { conductorsOf } from "../conductors";
import { workPointFields } from "../jobFields";
import type { StillhotDocument } from "../types";
import { pointName } from "../names";
import { change, type Edit, type Draft, hasPoint, nameOf, nextId, putPart, withKeys } from "./change";

const workPointsOf = ({ job }: Pick<StillhotDocument, "job">): Record<string, JsonObject> => {
  const workPoints = job?.["workPoints"];
  return isObject(workPoints) ? (workPoints as Record<string, JsonObject>) : {};
};

function putWorkPoint(draft: Draft, before: StillhotDocument, id: string, record: JsonObject): void {
  const workPoints = { ...workPointsOf(before), [id]: record };
  putPart(draft, "job", { ...before.job, workPoints });
}

/** Marks a place where hands go: on all of its point's phases, unless the keys say which. */
export const addWorkPoint =
  (at: string, keys: JsonObject = {}): Edit =>
  (before) => {
    if (!hasPoint(before, at)) return refuse(say("edit.noPoint", { id: at }));
    const conductors = conductorsOf(before.system)
      .get(at)!
      .filter((it) => it !== "N");
    const id = nextId("w", (it) => Object.hasOwn(workPointsOf(before), it));
    return change(
      say("edit.addWorkPoint", { at: pointName(before, at) }),
      before,
      (draft) => putWorkPoint(draft, before, id, withKeys({ at, conductors: conductors.join("") }, keys)),
      { made: [id] },
    );
  };

/** Sets keys of a work point; `undefined` takes a key away. */
export const setWorkPoint =
  (id: string, keys: JsonObject): Edit =>
  (before) => {
    const workPoints = workPointsOf(before);
    if (!Object.hasOwn(workPoints, id)) return refuse(say("edit.noThing", { id }));
    const unknown = Object.keys(keys).find(
      (key) => keys[key] !== undefined && !isFileKey(workPointFields, key),
    );
    if (unknown !== undefined) return refuse(say("edit.unknownKey", { key: unknown }));
    const workPoint = workPoints[id]!;
    return change(say("edit.setKeys", { name: nameOf(id, workPoint) }), before, (draft) =>
      putWorkPoint(draft, before, id, withKeys(workPoint, keys)),
    );
  };
