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
  /** which page wrote it, and its how manieth edit it was: what is newer is told without a clock */
  readonly page?: string;
  readonly edit?: number;
  /** when it was put into the trash, if it lies there */
  readonly deletedAt?: number;
}

/** Why a version was kept: `clock` by itself, `named` by the person, and the others before something large. */
export type VersionReason = "clock" | "named" | "open" | "import" | "plan" | "rehearse" | "restore";

/** What is known of an earlier version without its drawing. */
export interface VersionHead {
  readonly id?: number;
  readonly drawing: string;
  readonly at: number;
  readonly why: VersionReason;
  readonly name?: string;
  readonly title: string;
  readonly points: number;
  readonly elements: number;
}

/** A stamp as this device keeps it: what it says is judged whenever it is read. */
export interface StoredStamp {
  readonly id: string;
  readonly savedAt: number;
  readonly join: string;
  readonly text: string;
}

/** What the browser's database holds. */
export interface Shelves extends DBSchema {
  drawings: { key: string; value: StoredDrawing; indexes: { savedAt: number } };
  memory: { key: string; value: string };
  /** what is known of each earlier version, apart from its drawing, so that a list of them is light */
  versions: { key: number; value: VersionHead; indexes: { drawing: string } };
  bodies: { key: number; value: StillhotDocument };
  /** arrangements of this person's own */
  stamps: { key: string; value: StoredStamp };
}

/**
 * So long a device may take to open what it keeps [ms]: most need a few thousandths of a second. One that neither opens it nor
 * says why not must not be waited for without end.
 */
const OPENS_WITHIN_MS = 8000;

let opened: Promise<IDBPDatabase<Shelves>> | undefined;

/** The browser's database, opened once. Rejected where the browser keeps none. */
export const shelves = (): Promise<IDBPDatabase<Shelves>> =>
  (opened ??= new Promise<IDBPDatabase<Shelves>>((done, fail) => {
    open().then(done, fail);
    setTimeout(() => fail(new DOMException("", "TimeoutError")), OPENS_WITHIN_MS);
  }).catch((error: unknown) => {
    opened = undefined;
    throw error;
  }));

const open = () =>
  openDB<Shelves>("stillhot", 3, {
    upgrade(database, from) {
      if (from < 1) {
        database.createObjectStore("drawings", { keyPath: "id" }).createIndex("savedAt", "savedAt");
        database.createObjectStore("memory");
      }
      if (from < 2) {
        database
          .createObjectStore("versions", { keyPath: "id", autoIncrement: true })
          .createIndex("drawing", "drawing");
        database.createObjectStore("bodies");
      }
      if (from < 3) database.createObjectStore("stamps", { keyPath: "id" });
    },
    /** A newer program in another window needs the shelves: this one lets go, and asks again when it next writes. */
    blocking(_from, _to, event) {
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
    terminated() {
      opened = undefined;
    },
  });
