import { hasPositions } from "../../devices";
import { refuse, say } from "../../terms";
import { elementName } from "../names";
import { type Edit, elementOf, putRecords, withKeys } from "./change";

/** Throws a transfer switch. */
export const setPosition =
  (id: string, position: "utility" | "generator" | "off"): Edit =>
  (before) => {
    const saved = elementOf(before, id);
    if (saved === undefined || !hasPositions(saved)) return refuse(say("edit.noTransfer", { id }));
    if ((saved["position"] ?? "utility") === position)
      return refuse(say("edit.alreadyThere", { name: elementName(before, id), position }));
    const label = say("edit.setPosition", { name: elementName(before, id), position });
    return putRecords(label, before, { elements: { [id]: withKeys(saved, { position }) } });
  };
