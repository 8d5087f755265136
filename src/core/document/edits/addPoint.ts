import { type JsonObject, say } from "../../terms";
import { type Edit, nextPointId, plain, putRecords } from "./change";

/** Adds a point that nothing is joined to yet. */
export const addPoint =
  (keys: JsonObject = {}): Edit =>
  (before) => {
    const id = nextPointId(before);
    return putRecords(say("edit.addPoint"), before, { points: { [id]: plain(keys) } }, { made: [id] });
  };
