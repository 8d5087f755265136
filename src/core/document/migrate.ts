import { field } from "../devices";
import { isObject, type Json, type JsonObject, type Message, say } from "../terms";
import type { FileProblem } from "./problem";

/** Makes a file of one version into the next one's. Pure; it may rely on nothing but what its own version promised. */
export type Migration = (older: JsonObject) => JsonObject;

/** The step at index 0 makes version 1 into version 2, and so on. There is only version 1 so far. */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * Brings a file to the newest version, or says why it cannot be one of this format.
 *
 * @param chain one step for each older version; tests hand in an invented one
 */
export function migrate(file: Json, chain = MIGRATIONS): { readonly file: JsonObject } | FileProblem {
  const newest = chain.length + 1;
  if (!isObject(file)) return { path: "", message: say("file.notAnObject") };
  const { format, formatVersion: version } = file;
  if (format !== "stillhot")
    return { path: "format", message: foundInPlaceOf(format, say("file.notThisFormat")) };
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    return { path: "formatVersion", message: foundInPlaceOf(version, say("file.noVersion", { newest })) };
  if (version > newest) return { path: "formatVersion", message: say("file.newer", { version, newest }) };
  const migrated = chain.slice(version - 1).reduce<JsonObject>((older, step) => step(older), file);
  return { file: version === newest ? file : { ...migrated, formatVersion: newest } };
}

const foundInPlaceOf = (found: Json | undefined, expected: Message): Message =>
  found === undefined
    ? say("file.expected", { expected })
    : say("read.expected", { found: field.describe(found), expected });
