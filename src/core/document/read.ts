import { type Finding, isObject, type JsonObject, say } from "../terms";
import { checkDocument } from "./check";
import { migrate, MIGRATIONS } from "./migrate";
import { parseJson } from "./parse";
import { below, type Unreadable } from "./problem";
import { withoutInternals } from "./repair";
import type { StillhotDocument } from "./types";

/** A file that was read, and what its reader should know of it. */
export interface ReadFile {
  readonly document: StillhotDocument;
  readonly warnings: readonly Finding[];
}

/**
 * Reads a file. It is read whole or not at all: with any problem there is no document.
 *
 * @param text the file as text; a byte order mark is let through
 * @param chain steps from older versions; tests hand in invented ones
 */
export function readDocument(text: string, chain = MIGRATIONS): ReadFile | Unreadable {
  const parsed = parseJson(text);
  if (!("value" in parsed)) return { problems: [parsed] };
  const migrated = migrate(parsed.value, chain);
  if (!("file" in migrated)) return { problems: [migrated] };
  const { file, taken } = repaired(migrated.file);
  const { problems, unknown } = checkDocument(file);
  if (problems.length > 0) return { problems };
  return {
    document: filled(file),
    warnings: [...paths("unknown-key", unknown), ...paths("repaired", taken)],
  };
}

/** Title and frequency are always there in a document, so that nobody who asks for them needs their defaults. */
const filled = (file: JsonObject): StillhotDocument =>
  ({
    ...file,
    title: file["title"] ?? "",
    system: { frequencyHz: 60, ...(file["system"] as JsonObject) },
  }) as never;

/** Repairs what can be repaired without a doubt of what was meant. */
function repaired(file: JsonObject): { readonly file: JsonObject; readonly taken: readonly string[] } {
  const system = file["system"];
  if (!isObject(system) || !isObject(system["elements"])) return { file, taken: [] };
  const { elements, taken } = withoutInternals(system["elements"]);
  return {
    file: taken.length === 0 ? file : { ...file, system: { ...system, elements } },
    taken: taken.map(([id, key]) => below(below("system.elements", id), key)),
  };
}

const MOST_NAMED = 8;

const SENTENCES = {
  "unknown-key": ["file.unknownKeys", "file.unknownKeysMore"],
  repaired: ["file.takenOut", "file.takenOutMore"],
} as const;

/** One warning for all paths of a sort: a newer file must stay readable in an older program. */
function paths(rule: keyof typeof SENTENCES, found: readonly string[]): Finding[] {
  if (found.length === 0) return [];
  const keys = found.slice(0, MOST_NAMED).join(", ");
  const more = found.length - MOST_NAMED;
  const [all, some] = SENTENCES[rule];
  return [
    {
      rule,
      severity: "warning",
      where: found[0]!,
      message: more > 0 ? say(some, { keys, more }) : say(all, { keys }),
      citation: "file format",
    },
  ];
}
