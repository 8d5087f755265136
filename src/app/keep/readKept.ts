import { isUnreadable, readHistory, readValue } from "../../core";
import type { StoredDrawing } from "./shelves";

/**
 * A kept drawing as the reader of files has it; nothing where it refuses it. What lies on a shelf may be from an older or a
 * newer program, or from a damaged disk: shown as it is, it would stop the page at every start.
 */
export function readKept(stored: StoredDrawing): StoredDrawing | undefined {
  const read = readValue(stored.document);
  if (isUnreadable(read)) return undefined;
  return {
    ...stored,
    title: read.document.title,
    savedAt: momentOr(stored.savedAt, 0),
    document: read.document,
    history: readHistory(stored.history),
  };
}

/** A moment that is on a calendar [ms since 1970], or else another. */
export const momentOr = (kept: unknown, otherwise: number): number =>
  typeof kept === "number" && Number.isFinite(new Date(kept).getTime()) ? kept : otherwise;
