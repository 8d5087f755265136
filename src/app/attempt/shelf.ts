import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Attempt, isOver } from "../../core";

/** An attempt as this device keeps it. */
export interface KeptAttempt {
  readonly id: string;
  readonly savedAt: number;
  readonly isOver: boolean;
  readonly attempt: Attempt;
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

export async function keepAttempt(id: string, attempt: Attempt): Promise<void> {
  await (await shelf()).put("attempts", { id, savedAt: Date.now(), isOver: isOver(attempt), attempt });
}

/** Every attempt on this device, newest first. */
export async function keptAttempts(): Promise<KeptAttempt[]> {
  return (await (await shelf()).getAllFromIndex("attempts", "savedAt")).reverse();
}

export const forgetAttempt = async (id: string): Promise<void> => (await shelf()).delete("attempts", id);
