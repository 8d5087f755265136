import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { STEP_VERBS } from "../../core";
import { Journal } from "../keep/journal";
import type { Entry } from "./run.svelte";

/** A rehearsal as this device keeps it. */
export interface StoredRun {
  /** of the drawing and its order of steps */
  readonly key: string;
  readonly savedAt: number;
  /** its how manieth state it is: which is newer is told without a clock, which may be set back */
  readonly turn?: number;
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
const channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("stillhot rehearsals") : undefined;

export async function keepRun(run: StoredRun): Promise<void> {
  journal.write(run.key, run);
  const { store, done } = (await shelf()).transaction("runs", "readwrite", { durability: "strict" });
  await store.put(run);
  const keys = await store.index("savedAt").getAllKeys();
  for (const key of keys.slice(0, Math.max(0, keys.length - MOST_RUNS))) await store.delete(key);
  await done;
  if (journal.read(run.key)?.turn === run.turn) journal.clear(run.key);
  channel?.postMessage(run.key);
}

/** Says which rehearsal another window has just kept. */
export const whenRunKeptElsewhere = (hear: (key: string) => void): void =>
  channel?.addEventListener("message", ({ data }: MessageEvent<string>) => hear(data));

/** The run of a drawing, as it was when its last tick was made. */
export async function runOf(key: string): Promise<StoredRun | undefined> {
  const noted = ifRun(journal.read(key));
  const stored = ifRun(await (await shelf()).get("runs", key));
  return noted !== undefined && (noted.turn ?? 0) >= (stored?.turn ?? 0) ? noted : stored;
}

/** What was kept, unless it cannot be shown: another version of the app may have left anything. */
function ifRun(kept: Partial<StoredRun> | undefined): StoredRun | undefined {
  const { entries, answered } = kept ?? {};
  const isRun = Array.isArray(entries) && entries.every(isEntry) && Array.isArray(answered);
  return isRun ? (kept as StoredRun) : undefined;
}

const isEntry = (entry: Partial<Entry> | null): boolean =>
  STEP_VERBS.some((verb) => verb === entry?.step?.do);
