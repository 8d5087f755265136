import { emptyHistory, type History, isUnreadable, readValue } from "../../core";
import type { StoredDrawing } from "./shelves";

/**
 * A kept drawing as the reader of files has it; nothing where it refuses it. What lies on a shelf may be from an older or a
 * newer program, or from a damaged disk: shown as it is, it would stop the page at every start.
 */
export function readKept(stored: StoredDrawing): StoredDrawing | undefined {
  const read = readValue(stored.document as never);
  if (isUnreadable(read)) return undefined;
  return {
    ...stored,
    document: read.document,
    history: isHistory(stored.history) ? stored.history : emptyHistory,
  };
}

const isHistory = (kept: unknown): kept is History =>
  typeof kept === "object" &&
  kept !== null &&
  "done" in kept &&
  Array.isArray(kept.done) &&
  "undone" in kept &&
  Array.isArray(kept.undone);
