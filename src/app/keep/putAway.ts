import { emptyHistory } from "../../core";
import { ConflictError, drawing, keep } from "./store";
import { Journal } from "./journal";
import { readKept } from "./readKept";
import type { StoredDrawing } from "./shelves";

const journal = new Journal<StoredDrawing>("drawing");

/**
 * Keeps a drawing before the call returns: a page that goes away is not told what came of anything slower. Where there is no
 * room for what could be undone, the drawing itself comes first.
 */
export function putAway(it: StoredDrawing): void {
  if (!journal.write(it.id, it)) journal.write(it.id, { ...it, history: emptyHistory });
}

/** What was put away is on the shelf by now. */
export const isOnShelf = (id: string): void => journal.clear(id);

/** What could not be brought onto the shelf, and why. */
export interface LeftOver {
  readonly left: StoredDrawing;
  readonly error: unknown;
}

/**
 * Brings what pages left behind onto the shelf, unless it came there by itself. Where the shelf has what such a page had not
 * seen, both are kept. No clock is asked which is newer: it may have been set back.
 *
 * @param titleOfCopy what the second of two is called
 * @returns what the shelf did not take, which stays where it is
 */
export async function bringIn(
  newId: () => string,
  titleOfCopy: (title: string) => string,
): Promise<LeftOver[]> {
  const leftOver: LeftOver[] = [];
  for (const { kept, strike } of journal.all()) {
    const left = kept === undefined ? undefined : readKept(kept);
    try {
      if (left !== undefined) await bringOne(left, newId, titleOfCopy);
      strike();
    } catch (error) {
      if (left !== undefined) leftOver.push({ left, error });
    }
  }
  return leftOver;
}

async function bringOne(left: StoredDrawing, newId: () => string, titleOfCopy: (title: string) => string) {
  const { rev, ...record } = left;
  const stored = await drawing(record.id);
  if (stored !== undefined && hasAll(stored, left)) return;
  const onShelf = stored?.rev ?? 0;
  const hasSeen = onShelf === rev || (stored?.page !== undefined && stored.page === left.page);
  const title = titleOfCopy(record.title);
  const copy = { ...record, id: newId(), title, document: { ...record.document, title } };
  await (hasSeen ? keep(record, onShelf) : keep(copy, 0)).catch((error: unknown) => {
    if (!(error instanceof ConflictError)) throw error;
  });
}

/** Whether the shelf has what was left behind: a later edit of the same page, or the same drawing. */
function hasAll(stored: StoredDrawing, left: StoredDrawing): boolean {
  if (stored.page !== undefined && stored.page === left.page) return (stored.edit ?? 0) >= (left.edit ?? 0);
  return JSON.stringify(stored.document) === JSON.stringify(left.document);
}
