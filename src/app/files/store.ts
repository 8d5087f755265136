import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { History, StillhotDocument } from "../../core";

/** One drawing as this device keeps it. */
export interface StoredDrawing {
  readonly id: string;
  /** counts writes, so that a second window never overwrites what it has not seen */
  readonly rev: number;
  readonly title: string;
  readonly savedAt: number;
  readonly document: StillhotDocument;
  readonly history: History;
}

interface Shelves extends DBSchema {
  drawings: { key: string; value: StoredDrawing; indexes: { savedAt: number } };
  memory: { key: string; value: string };
}

let opened: Promise<IDBPDatabase<Shelves>> | undefined;

const shelves = (): Promise<IDBPDatabase<Shelves>> =>
  (opened ??= openDB<Shelves>("stillhot", 1, {
    upgrade(database) {
      database.createObjectStore("drawings", { keyPath: "id" }).createIndex("savedAt", "savedAt");
      database.createObjectStore("memory");
    },
    terminated() {
      opened = undefined;
    },
  }));

export class ConflictError extends Error {}

/**
 * Writes a drawing where the stored one is still the one that was read.
 *
 * @returns the new rev
 * @throws ConflictError when another window has written it since
 */
export async function keep(drawing: Omit<StoredDrawing, "rev">, readRev: number): Promise<number> {
  const transaction = (await shelves()).transaction(["drawings", "memory"], "readwrite");
  const stored = await transaction.objectStore("drawings").get(drawing.id);
  if ((stored?.rev ?? 0) !== readRev) {
    transaction.abort();
    await transaction.done.catch(() => undefined);
    throw new ConflictError();
  }
  const rev = readRev + 1;
  await transaction.objectStore("drawings").put({ ...drawing, rev });
  await transaction.objectStore("memory").put(drawing.id, "last");
  await transaction.done;
  return rev;
}

/** The drawing that was worked on last. */
export async function lastDrawing(): Promise<StoredDrawing | undefined> {
  const database = await shelves();
  const id = await database.get("memory", "last");
  return id === undefined ? undefined : database.get("drawings", id);
}

export const drawing = async (id: string): Promise<StoredDrawing | undefined> =>
  (await shelves()).get("drawings", id);

/** Every drawing on this device, newest first. */
export async function allDrawings(): Promise<StoredDrawing[]> {
  const found = await (await shelves()).getAllFromIndex("drawings", "savedAt");
  return found.reverse();
}

export async function forget(id: string): Promise<void> {
  await (await shelves()).delete("drawings", id);
}
