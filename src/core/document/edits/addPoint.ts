import { type JsonObject, say } from "../../terms";
import { change, type Command, nextPointId, plain, put } from "./change";

/** Adds a point that nothing is joined to yet. */
export const addPoint =
  (keys: JsonObject = {}): Command =>
  (before) => {
    const id = nextPointId(before);
    return change(
      say("edit.addPoint", { id }),
      before,
      (draft) => put(draft.system.points, id, plain(keys)),
      {
        made: [id],
      },
    );
  };
