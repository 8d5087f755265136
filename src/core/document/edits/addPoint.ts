import { type JsonObject, say } from "../../terms";
import { type Command, nextPointId, plain, putRecord } from "./change";

/** Adds a point that nothing is joined to yet. */
export const addPoint =
  (keys: JsonObject = {}): Command =>
  (before) => {
    const id = nextPointId(before);
    return putRecord(say("edit.addPoint", { id }), before, "points", id, plain(keys), { made: [id] });
  };
