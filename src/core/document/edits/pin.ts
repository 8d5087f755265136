import { say } from "../../terms";
import { completePoint } from "../complete";
import { type Edit, pointOf, together } from "./change";
import { setPointKeys } from "./setKeys";

/** Holds points where they are when the drawing is laid out anew. Refused when all of them are held already. */
export const pin = (ids: readonly string[]): Edit => setPinned(ids, true);

/** Lets points go again. */
export const unpin = (ids: readonly string[]): Edit => setPinned(ids, false);

const setPinned =
  (ids: readonly string[], isHeld: boolean): Edit =>
  (before) => {
    const turning = ids.filter((id) => {
      const point = pointOf(before, id);
      return point === undefined || completePoint(point).pinned !== isHeld;
    });
    return together(
      say(isHeld ? "edit.pin" : "edit.unpin", { count: turning.length }),
      turning.map((id) => setPointKeys(id, { pinned: isHeld ? true : undefined })),
    )(before);
  };
