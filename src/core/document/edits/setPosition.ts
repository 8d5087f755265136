import { refuse, say } from "../../terms";
import { type Command, elementOf, nameOf, putRecord, withKeys } from "./change";

/** Throws a transfer switch. */
export const setPosition =
  (id: string, position: "utility" | "generator" | "off"): Command =>
  (before) => {
    const saved = elementOf(before, id);
    if (saved?.kind !== "transfer") return refuse(say("edit.noTransfer", { id }));
    if ((saved["position"] ?? "utility") === position)
      return refuse(say("edit.alreadyThere", { name: nameOf(id, saved), position }));
    const label = say("edit.setPosition", { name: nameOf(id, saved), position });
    return putRecord(label, before, "elements", id, withKeys(saved, { position }));
  };
