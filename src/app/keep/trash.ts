import { shelves, type StoredDrawing } from "./shelves";
import { DAY, drop, type KeptVersion, writing } from "./versions";

/** How long a drawing lies in the trash. */
export const TRASH_DAYS = 30;

/** Puts a drawing into the trash, from where it comes back for a month. */
export async function throwAway(id: string, now = Date.now()): Promise<void> {
  const transaction = await writing();
  const stored = await transaction.objectStore("drawings").get(id);
  if (stored !== undefined) await transaction.objectStore("drawings").put({ ...stored, deletedAt: now });
  await transaction.done;
}

/** Takes a drawing out of the trash. */
export async function takeBack(id: string): Promise<void> {
  const transaction = await writing();
  const stored = await transaction.objectStore("drawings").get(id);
  if (stored !== undefined) {
    const { deletedAt: _, ...rest } = stored;
    await transaction.objectStore("drawings").put(rest);
  }
  await transaction.done;
}

/** Drawings in the trash, the last one thrown away first. */
export async function trash(): Promise<StoredDrawing[]> {
  const all = await (await shelves()).getAll("drawings");
  return all.filter((it) => it.deletedAt !== undefined).sort((a, b) => b.deletedAt! - a.deletedAt!);
}

/** Empties the trash of what has lain there for its time; of everything where the device is full. */
export async function sweep(now = Date.now(), everything = false): Promise<number> {
  const transaction = await writing();
  const all = await transaction.objectStore("drawings").getAll();
  const gone = all.filter(
    ({ deletedAt }) => deletedAt !== undefined && (everything || now - deletedAt > TRASH_DAYS * DAY),
  );
  for (const { id } of gone) {
    const versions = await transaction.objectStore("versions").index("drawing").getAllKeys(id);
    await drop(transaction, versions);
    await transaction.objectStore("drawings").delete(id);
  }
  await transaction.done;
  if (gone.length > 0) await dropPictures(gone.map((it) => it.id)).catch(() => undefined);
  return gone.length;
}

/** With a drawing go its pictures. */
async function dropPictures(drawings: readonly string[]): Promise<void> {
  const { dropPicturesOf } = await import("./photos");
  await Promise.all(drawings.map(dropPicturesOf));
}

/** Lets go of what the clock kept, of every drawing, where the device is full: the drawing itself comes first. */
export async function makeRoom(): Promise<void> {
  await sweep(Date.now(), true);
  const transaction = await writing();
  const heads = (await transaction.objectStore("versions").getAll()) as KeptVersion[];
  await drop(
    transaction,
    heads.filter((it) => it.why === "clock").map((it) => it.id),
  );
  await transaction.done;
}
