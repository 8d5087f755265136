import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { isTried, mergedTried, type Tried } from "../../core";

interface Shelf extends DBSchema {
  tried: { key: string; value: Tried };
}

let opened: Promise<IDBPDatabase<Shelf>> | undefined;

/** What was learned is added to and never changed: two windows take nothing away from each other. */
const shelf = (): Promise<IDBPDatabase<Shelf>> =>
  (opened ??= openDB<Shelf>("stillhot-learner", 1, {
    upgrade(database) {
      database.createObjectStore("tried", { keyPath: "id" });
    },
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
  }));

const two = (value: number): string => String(value).padStart(2, "0");

/** The day by this device's own calendar. */
export function today(now = new Date()): string {
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Keeps that something was tried, now. */
export async function noteTried(what: Pick<Tried, "item" | "right" | "share" | "shares">): Promise<void> {
  const now = new Date();
  await takeInTried([{ id: crypto.randomUUID(), at: now.toISOString(), day: today(now), ...what }]);
}

/** Told when the record has grown. */
export const grown = new EventTarget();

/** Adds what was done elsewhere. What is here already stays as it is. */
export async function takeInTried(list: readonly Tried[]): Promise<void> {
  const transaction = (await shelf()).transaction("tried", "readwrite", { durability: "strict" });
  const here = (await transaction.store.getAll()).filter(isTried);
  const added = new Set(list.map(({ id }) => id));
  for (const it of mergedTried(here, list)) if (added.has(it.id)) await transaction.store.put(it);
  await transaction.done;
  grown.dispatchEvent(new Event("change"));
}

/** All that was tried on this device or brought to it, in its order. */
export const allTried = async (): Promise<readonly Tried[]> =>
  mergedTried((await (await shelf()).getAll("tried")).filter(isTried));

/** Takes all of it away. */
export async function forgetTried(): Promise<void> {
  await (await shelf()).clear("tried");
}
