import { deviceOf, type End } from "../../devices";
import { refuse, say } from "../../terms";
import { elementName, pointName } from "../names";
import { type Edit, elementOf, hasPoint, putRecords, withKeys } from "./change";

/** Moves one end of an element to another point. */
export const reconnect =
  (id: string, end: End, point: string): Edit =>
  (before) => {
    const element = elementOf(before, id);
    if (element === undefined) return refuse(say("edit.noElement", { id }));
    const name = elementName(before, id);
    if (!deviceOf(element.kind).ends.includes(end)) return refuse(say("edit.noEnd", { name, end }));
    if (!hasPoint(before, point)) return refuse(say("edit.noPoint", { id: point }));
    const record = withKeys(element, { [end]: point });
    return putRecords(say("edit.reconnect", { name, point: pointName(before, point) }), before, {
      elements: { [id]: record },
    });
  };
