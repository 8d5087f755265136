import { say } from "../../terms";
import type { SavedElement } from "../types";
import { type Edit, elementOf, nextElementId, putRecords } from "./change";

/** Puts an element back that was removed, under its own id where nothing has taken that since. */
export const putBack =
  (id: string, saved: SavedElement): Edit =>
  (before) => {
    const own = elementOf(before, id) === undefined ? id : nextElementId(before, saved.kind);
    return putRecords(
      say("edit.addElement", { id: own }),
      before,
      { elements: { [own]: saved } },
      { made: [own] },
    );
  };
