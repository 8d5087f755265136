import { type Finding, type Json, type JsonObject, say } from "../terms";
import { checkDocument, vouchFor } from "./check";
import { doubtsOf } from "./doubts";
import { migrate, MIGRATIONS } from "./migrate";
import { parseJson } from "./parse";
import type { Unreadable } from "./problem";
import type { StillhotDocument } from "./types";

/** A file that was read, and what its reader should know of it. */
export interface ReadFile {
  readonly document: StillhotDocument;
  readonly warnings: readonly Finding[];
}

/** The text that was read last. Read again it is the same drawing, of which everything is known that was worked out. */
let last: { readonly text: string; readonly found: ReadFile | Unreadable } | undefined;

/**
 * Reads a file. It is read whole or not at all: with any problem there is no document.
 *
 * @param text the file as text; a byte order mark is let through
 * @param chain steps from older versions; tests hand in invented ones
 */
export function readDocument(text: string, chain = MIGRATIONS): ReadFile | Unreadable {
  if (chain !== MIGRATIONS) return readText(text, chain);
  if (last?.text !== text) last = { text, found: readText(text, chain) };
  return last.found;
}

function readText(text: string, chain: typeof MIGRATIONS): ReadFile | Unreadable {
  const parsed = parseJson(text);
  return "value" in parsed ? readValue(parsed.value, chain) : { problems: [parsed] };
}

/** The same of what was kept as a value and not as text, whoever wrote it. */
export function readValue(value: unknown, chain = MIGRATIONS): ReadFile | Unreadable {
  const migrated = migrate(value as Json, chain);
  if (!("file" in migrated)) return { problems: [migrated] };
  const { problems, unknown } = checkDocument(migrated.file);
  if (problems.length > 0) return { problems };
  const document = filled(migrated.file);
  vouchFor(document);
  return {
    document,
    warnings: [...(unknown.length === 0 ? [] : [unknownKeys(unknown)]), ...doubtsOf(document.system)],
  };
}

/**
 * Title and frequency are always there in a document, so that nobody who asks for them needs their defaults. That the rest is
 * one was looked at key by key.
 */
const filled = (file: JsonObject): StillhotDocument =>
  ({
    ...file,
    title: file["title"] ?? "",
    system: { frequencyHz: 60, ...(file["system"] as JsonObject) },
  }) as unknown as StillhotDocument;

const MOST_NAMED = 8;

/** One warning a file, however many keys: a newer file must stay readable in an older program. */
function unknownKeys(paths: readonly string[]): Finding {
  const keys = paths.slice(0, MOST_NAMED).join(", ");
  const more = paths.length - MOST_NAMED;
  return {
    rule: "unknown-key",
    severity: "warning",
    where: paths[0]!,
    message: more > 0 ? say("file.unknownKeysMore", { keys, more }) : say("file.unknownKeys", { keys }),
    citation: "file format",
  };
}
