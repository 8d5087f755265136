import { momentOr } from "./readKept";
import { shelves, type StoredDrawing } from "./shelves";
import { keepClockVersion } from "./versions";

export type { StoredDrawing };

/** Another window wrote the drawing since it was read. */
export class ConflictError extends Error {}

/**
 * Writes a drawing where the stored one is still the one that was read, and keeps the stored one as an earlier version
 * when the clock says so: both or neither.
 *
 * @returns the new rev
 * @throws ConflictError when another window has written it since
 */
export async function keep(drawing: Omit<StoredDrawing, "rev">, readRev: number): Promise<number> {
  // A dead battery must not take what was said to be saved: the write counts once it is on the disk.
  const transaction = (await shelves()).transaction(
    ["drawings", "memory", "versions", "bodies"],
    "readwrite",
    {
      durability: "strict",
    },
  );
  // A failure is answered once, below; its other promises reject beside it.
  transaction.done.catch(() => undefined);
  try {
    const stored = await transaction.objectStore("drawings").get(drawing.id);
    if ((stored?.rev ?? 0) !== readRev) throw new ConflictError();
    const rev = readRev + 1;
    if (stored !== undefined) await keepClockVersion(transaction, stored);
    await Promise.all([
      transaction.objectStore("drawings").put({ ...drawing, rev }),
      transaction.objectStore("memory").put(drawing.id, "last"),
    ]);
    await transaction.done;
    return rev;
  } catch (error) {
    try {
      transaction.abort();
    } catch {
      // It has ended by itself.
    }
    throw error instanceof ConflictError ? error : (transaction.error ?? error);
  }
}

/** The drawing that was worked on last. */
export async function lastDrawing(): Promise<StoredDrawing | undefined> {
  const database = await shelves();
  const id = await database.get("memory", "last");
  const last = id === undefined ? undefined : await database.get("drawings", id);
  return last?.deletedAt === undefined ? last : undefined;
}

/** A drawing as it is kept; nothing where there is none of this id. */
export const drawing = async (id: string): Promise<StoredDrawing | undefined> =>
  (await shelves()).get("drawings", id);

/** Every drawing on this device that is not in the trash, newest first. */
export async function allDrawings(): Promise<StoredDrawing[]> {
  // Not by its index: that leaves out what has no moment.
  const found = (await (await shelves()).getAll("drawings")).map(listed);
  return found.filter((it) => it.deletedAt === undefined).sort((a, b) => b.savedAt - a.savedAt);
}

/** As a list may tell of it: what is not what it should be stops no list. */
export const listed = (stored: StoredDrawing): StoredDrawing => ({
  ...stored,
  title: typeof stored.title === "string" ? stored.title : "",
  savedAt: momentOr(stored.savedAt, 0),
});
