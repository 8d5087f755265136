import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Attempt, isOver, readKeptAttempt } from "../../core";
import { Journal } from "../keep/journal";

/** An attempt as this device keeps it. */
export interface KeptAttempt {
  readonly id: string;
  readonly savedAt: number;
  readonly isOver: boolean;
  readonly attempt: Attempt;
  /** seconds that somebody has been at it; attempts of an older version have none */
  readonly seconds?: number;
}

interface Shelf extends DBSchema {
  attempts: { key: string; value: KeptAttempt; indexes: { savedAt: number } };
}

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

/** A database of its own: attempts are no drawings, and come and go by themselves. */
const shelf = (): Promise<IDBPDatabase<Shelf>> =>
  (opened ??= openDB<Shelf>("stillhot-attempts", 1, {
    upgrade(database) {
      database.createObjectStore("attempts", { keyPath: "id" }).createIndex("savedAt", "savedAt");
    },
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
  }));

const journal = new Journal<KeptAttempt>("attempt");

export async function keepAttempt(id: string, attempt: Attempt, seconds: number): Promise<void> {
  const kept = { id, savedAt: Date.now(), isOver: isOver(attempt), attempt, seconds };
  journal.write(kept);
  await (await shelf()).put("attempts", kept);
}

/** Every attempt on this device, newest first. */
export async function keptAttempts(): Promise<KeptAttempt[]> {
  const newest = readKept(journal.read());
  const stored = (await (await shelf()).getAllFromIndex("attempts", "savedAt"))
    .reverse()
    .flatMap((it) => readKept(it) ?? []);
  if (newest === undefined || stored.some((it) => it.id === newest.id && it.savedAt > newest.savedAt))
    return stored;
  return [newest, ...stored.filter((it) => it.id !== newest.id)];
}

export async function forgetAttempt(id: string): Promise<void> {
  if (journal.read()?.id === id) journal.clear();
  await (await shelf()).delete("attempts", id);
}

/** What was kept, unless it cannot be played or told: another version of the app may have left anything. */
function readKept(kept: KeptAttempt | undefined): KeptAttempt | undefined {
  const attempt = readKeptAttempt(kept?.attempt as never);
  if (kept === undefined || attempt === undefined) return undefined;
  const { id, savedAt, seconds = 0 } = kept;
  const isMoment = Number.isFinite(new Date(savedAt).getTime());
  const isWhole = typeof id === "string" && isMoment && Number.isFinite(seconds);
  return isWhole ? { ...kept, attempt } : undefined;
}
