import { refuse, say } from "../../terms";
import { change, type Command, elementOf, nameOf, put, withKeys } from "./change";

/** Throws a transfer switch. */
export const setPosition =
  (id: string, position: "utility" | "generator" | "off"): Command =>
  (before) => {
    const saved = elementOf(before, id);
    if (saved?.kind !== "transfer") return refuse(say("edit.noTransfer", { id }));
    if ((saved["position"] ?? "utility") === position)
      return refuse(say("edit.alreadyThere", { name: nameOf(id, saved), position }));
    return change(say("edit.setPosition", { name: nameOf(id, saved), position }), before, (draft) =>
      put(draft.system.elements, id, withKeys(saved, { position })),
    );
  };
