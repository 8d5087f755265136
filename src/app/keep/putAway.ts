import { ConflictError, drawing, keep } from "./store";
import { Journal } from "./journal";
import { readKept } from "./readKept";
import type { StoredDrawing } from "./shelves";

/** A drawing as it was when its page went away. */
export interface PutAway extends StoredDrawing {
  /** whether an earlier state of it was just being written: then the shelf may be one write ahead of `rev` */
  readonly isBeingWritten: boolean;
}

const journal = new Journal<PutAway>("drawing");

/** Keeps a drawing before the call returns: a page that goes away is not told what came of anything slower. */
export const putAway = (it: PutAway): void => journal.write(it);

/** What was put away is on the shelf by now. */
export const isOnShelf = (): void => journal.clear();

/**
 * Brings what a page left behind onto the shelf, unless it came there by itself. Where the shelf has what that page had not
 * seen, both are kept.
 *
 * @param titleOfCopy what the second of two is called
 */
export async function bringIn(newId: () => string, titleOfCopy: (title: string) => string): Promise<void> {
  const found = journal.read();
  const left = found === undefined ? undefined : readKept(found);
  if (found === undefined || left === undefined) return journal.clear();
  const { isBeingWritten, rev, ...record } = { ...found, ...left };
  const stored = await drawing(record.id);
  const onShelf = stored?.rev ?? 0;
  if (stored === undefined || stored.savedAt < record.savedAt) {
    const hasSeen = onShelf === rev || (isBeingWritten && onShelf === rev + 1);
    const copy = { ...record, id: newId(), title: titleOfCopy(record.title) };
    await (
      hasSeen
        ? keep(record, onShelf)
        : keep({ ...copy, document: { ...record.document, title: copy.title } }, 0)
    ).catch((error: unknown) => {
      if (!(error instanceof ConflictError)) throw error;
    });
  }
  journal.clear();
}
