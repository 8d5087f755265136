import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { STEP_VERBS } from "../../core";
import { Journal } from "../keep/journal";
import type { Entry } from "./run.svelte";

/** A rehearsal as this device keeps it. */
export interface StoredRun {
  /** of the drawing and its order of steps */
  readonly key: string;
  readonly savedAt: number;
  readonly entries: readonly Entry[];
  readonly answered: readonly string[];
}

interface Shelf extends DBSchema {
  runs: { key: string; value: StoredRun; indexes: { savedAt: number } };
}

/** Older runs are forgotten. */
const MOST_RUNS = 40;

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

const shelf = (): Promise<IDBPDatabase<Shelf>> =>
  (opened ??= openDB<Shelf>("stillhot-rehearsals", 1, {
    upgrade(database) {
      database.createObjectStore("runs", { keyPath: "key" }).createIndex("savedAt", "savedAt");
    },
    terminated() {
      opened = undefined;
    },
  }));

const journal = new Journal<StoredRun>("run");

export async function keepRun(run: StoredRun): Promise<void> {
  journal.write(run);
  const { store, done } = (await shelf()).transaction("runs", "readwrite");
  await store.put(run);
  const keys = await store.index("savedAt").getAllKeys();
  for (const key of keys.slice(0, Math.max(0, keys.length - MOST_RUNS))) await store.delete(key);
  await done;
}

/** The run of a drawing, as it was when its last tick was made. */
export async function runOf(key: string): Promise<StoredRun | undefined> {
  const newest = ifRun(journal.read());
  const stored = ifRun(await (await shelf()).get("runs", key));
  return newest?.key === key && newest.savedAt >= (stored?.savedAt ?? 0) ? newest : stored;
}

/** What was kept, unless it cannot be shown: another version of the app may have left anything. */
function ifRun(kept: Partial<StoredRun> | undefined): StoredRun | undefined {
  const { entries, answered } = kept ?? {};
  const isRun = Array.isArray(entries) && entries.every(isEntry) && Array.isArray(answered);
  return isRun ? (kept as StoredRun) : undefined;
}

const isEntry = (entry: Partial<Entry> | null): boolean =>
  STEP_VERBS.some((verb) => verb === entry?.step?.do);
