import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Attempt, goesOnFrom, isOver, readKeptAttempt } from "../../core";
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
const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("stillhot attempts") : undefined;

/**
 * Keeps an attempt. It is only ever added to: what would take entries away from the kept one, or put others in their place,
 * as a second window may that has not seen them, is not written.
 *
 * @returns the kept one, where this one does not go on from it
 */
export async function keepAttempt(
  id: string,
  attempt: Attempt,
  seconds: number,
): Promise<KeptAttempt | undefined> {
  const kept = { id, savedAt: Date.now(), isOver: isOver(attempt), attempt, seconds };
  const isAhead = (other: KeptAttempt | undefined) =>
    other !== undefined && !goesOnFrom(attempt, other.attempt);
  const noted = readKept(journal.read(id));
  if (isAhead(noted)) return noted;
  journal.write(id, kept);
  const transaction = (await shelf()).transaction("attempts", "readwrite", { durability: "strict" });
  const stored = readKept(await transaction.store.get(id));
  if (!isAhead(stored)) await transaction.store.put(kept);
  await transaction.done;
  if (readKept(journal.read(id))?.savedAt === kept.savedAt) journal.clear(id);
  if (isAhead(stored)) return stored;
  channel?.postMessage(id);
  return undefined;
}

/** Says which attempt another window has just kept. */
export const whenKeptElsewhere = (hear: (id: string) => void): void =>
  channel?.addEventListener("message", ({ data }: MessageEvent<string>) => hear(data));

/** Every attempt on this device, newest first. */
export async function keptAttempts(): Promise<KeptAttempt[]> {
  const stored = await (await shelf()).getAllFromIndex("attempts", "savedAt");
  const byId = new Map(stored.flatMap((it) => readKept(it) ?? []).map((it) => [it.id, it]));
  for (const noted of journal.all().flatMap(({ kept }) => readKept(kept) ?? [])) {
    const other = byId.get(noted.id);
    if (other === undefined || goesOnFrom(noted.attempt, other.attempt)) byId.set(noted.id, noted);
  }
  return [...byId.values()].sort((a, b) => b.savedAt - a.savedAt);
}

/** Takes an attempt that is kept on the device away. */
export async function forgetAttempt(id: string): Promise<void> {
  journal.clear(id);
  await (await shelf()).delete("attempts", id);
}

/** What was kept, unless it cannot be played or told: another version of the app may have left anything. */
function readKept(kept: KeptAttempt | undefined): KeptAttempt | undefined {
  const attempt = readKeptAttempt(kept?.attempt);
  if (kept === undefined || attempt === undefined) return undefined;
  const { id, savedAt, seconds = 0 } = kept;
  const isMoment = Number.isFinite(new Date(savedAt).getTime());
  const isWhole = typeof id === "string" && isMoment && Number.isFinite(seconds);
  return isWhole ? { ...kept, attempt } : undefined;
}
