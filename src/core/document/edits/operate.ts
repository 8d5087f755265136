import { openingOf, openKeyOf } from "../../devices";
import { type JsonObject, refuse, say } from "../../terms";
import { complete } from "../complete";
import { elementName } from "../names";
import type { SavedElement } from "../types";
import { type Edit, elementOf, putRecords, withKeys } from "./change";

/**
 * Opens phases of a thing: a switch, a clamp, a meter; a span is parted and a lead is cut, its neutral too.
 *
 * @param phases of its own; all of them where it is left out, and on a gang device always
 */
export const open = (id: string, phases?: string): Edit => operate(id, "open", phases);

/** Closes phases of a thing, whatever holds them open: opened, blown, barrel out, parted, cut. */
export const close = (id: string, phases?: string): Edit => operate(id, "close", phases);

/** The key under which each kind that is opened by hand or by accident says which phases are open. */
const openKey = ({ kind }: SavedElement): "open" | "parted" | "cut" | undefined => openKeyOf(kind);

const operate =
  (id: string, action: "open" | "close", asked?: string): Edit =>
  (before) => {
    const saved = elementOf(before, id);
    if (saved === undefined) return refuse(say("edit.noElement", { id }));
    const name = elementName(before, id);
    const key = openKey(saved);
    if (key === undefined) return refuse(say("edit.doesNotOpen", { name }));

    const element = complete(saved);
    const { phases: own } = element as { phases: string };
    const opening = openingOf(element);
    const isGang = opening?.gang ?? false;
    const allowed = key === "open" ? own : `${own}N`;
    const phases = isGang ? own : (asked ?? own);
    const foreign = [...(asked ?? "")].find((it) => !allowed.includes(it));
    if (foreign !== undefined) return refuse(say("edit.notItsPhase", { name, phase: foreign, phases: own }));

    const was = (element as unknown as Record<string, string>)[key]!;
    const openNow = opening?.openPhases ?? was;
    const toMove = [...phases].filter((it) => openNow.includes(it) === (action === "close"));
    if (toMove.length === 0)
      return refuse(say(action === "open" ? "edit.alreadyOpen" : "edit.alreadyClosed", { name }));

    const moved = [...allowed].filter((it) => toMove.includes(it)).join("");
    const keys: JsonObject =
      action === "open"
        ? { [key]: [...allowed].filter((it) => was.includes(it) || moved.includes(it)).join("") }
        : ((opening?.closing(moved) as JsonObject | undefined) ?? {
            [key]: [...was].filter((it) => !moved.includes(it)).join(""),
          });
    const record = withKeys(saved, emptyAsAbsent(saved, keys));
    return putRecords(say(`edit.${action}`, { name, phases: moved }), before, { elements: { [id]: record } });
  };

/** Nothing open is the default, and stands in a record only where it stood before. */
const emptyAsAbsent = (saved: JsonObject, keys: JsonObject): JsonObject =>
  Object.fromEntries(
    Object.entries(keys).map(([key, value]) => [key, value === "" && saved[key] !== "" ? undefined : value]),
  );
