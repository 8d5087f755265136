import { deviceOf } from "../../devices";
import { type MessageKey, refuse, say } from "../../terms";
import { complete } from "../complete";
import { elementName } from "../names";
import { type Edit, elementOf, putRecords, withKeys } from "./change";

/** Hangs a tag on a thing. */
export const tag = (id: string): Edit => setFlag(id, "tagged", true, "edit.tag", "edit.alreadyTagged");
/** Takes the tag off. */
export const untag = (id: string): Edit => setFlag(id, "tagged", false, "edit.untag", "edit.notTagged");
/** Keeps a thing from closing by itself or by hand. */
export const block = (id: string): Edit => setFlag(id, "blocked", true, "edit.block", "edit.alreadyBlocked");
/** Lets it close again. */
export const unblock = (id: string): Edit => setFlag(id, "blocked", false, "edit.unblock", "edit.notBlocked");
/** Turns a source or a generator on. */
export const turnOn = (id: string): Edit => setFlag(id, "on", true, "edit.turnOn", "edit.alreadyOn");
/** Turns a source or a generator off. */
export const turnOff = (id: string): Edit => setFlag(id, "on", false, "edit.turnOff", "edit.alreadyOff");

const setFlag =
  (
    id: string,
    key: "tagged" | "blocked" | "on",
    value: boolean,
    label: MessageKey,
    already: MessageKey,
  ): Edit =>
  (before) => {
    const saved = elementOf(before, id);
    if (saved === undefined) return refuse(say("edit.noElement", { id }));
    const name = elementName(before, id);
    const field = deviceOf(saved.kind).fields[key];
    if (field?.input.as !== "flag") return refuse(say("edit.noKey", { name, key }));
    const is = (complete(saved) as unknown as Record<string, unknown>)[key];
    if (is === value) return refuse(say(already, { name }));
    const record = withKeys(saved, { [key]: value === field.fallback ? undefined : value });
    return putRecords(say(label, { name }), before, { elements: { [id]: record } });
  };
