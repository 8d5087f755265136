import type { IDBPTransaction } from "idb";
import type { StillhotDocument } from "../../core";
import { shelves, type Shelves, type StoredDrawing, type VersionHead, type VersionReason } from "./shelves";

export type { VersionReason };

/** An earlier version of a drawing, without the drawing itself. */
export type KeptVersion = VersionHead & { readonly id: number };

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
/** In milliseconds. */
export const DAY = 24 * HOUR;

/**
 * The versions that have had their time: by the clock one stays for each minute of half an hour, for each hour of a day
 * and for each day of a month, the oldest of each; those before something large stay a month, and named ones for good.
 */
export function outworn(heads: readonly KeptVersion[], now: number): number[] {
  const taken = new Set<string>();
  return [...heads]
    .sort((a, b) => a.at - b.at)
    .flatMap(({ id, at, why }) => {
      if (why === "named") return [];
      const age = now - at;
      if (age > 30 * DAY) return [id];
      if (why !== "clock") return [];
      const span = age <= 30 * MINUTE ? MINUTE : age <= DAY ? HOUR : DAY;
      const slot = `${span} ${Math.floor(at / span)}`;
      if (taken.has(slot)) return [id];
      taken.add(slot);
      return [];
    });
}

type Written = "drawings" | "memory" | "versions" | "bodies";
type Writing = IDBPTransaction<Shelves, Written[], "readwrite">;

/** Keeps what is stored, about to be written over, as an earlier version where the last one is a minute old. */
export async function keepClockVersion(transaction: Writing, stored: StoredDrawing): Promise<void> {
  const heads = (await transaction
    .objectStore("versions")
    .index("drawing")
    .getAll(stored.id)) as KeptVersion[];
  const last = Math.max(0, ...heads.map((it) => it.at));
  if (stored.savedAt - last < MINUTE) return;
  await put(transaction, headOf(stored, "clock", stored.savedAt), stored.document);
  await drop(transaction, outworn(heads, stored.savedAt));
}

const headOf = (
  { id, document }: Pick<StoredDrawing, "id" | "document">,
  why: VersionReason,
  at: number,
  name?: string,
): VersionHead => ({
  drawing: id,
  at,
  why,
  ...(name === undefined ? {} : { name }),
  title: document.title,
  points: Object.keys(document.system.points).length,
  elements: Object.keys(document.system.elements).length,
});

async function put(transaction: Writing, head: VersionHead, document: StillhotDocument) {
  const id = await transaction.objectStore("versions").add(head);
  await transaction.objectStore("bodies").put(document, id);
}

/** Forgets versions, within what is being written. */
export async function drop(transaction: Writing, ids: readonly number[]) {
  await Promise.all(
    ids.flatMap((id) => [
      transaction.objectStore("versions").delete(id),
      transaction.objectStore("bodies").delete(id),
    ]),
  );
}

/** All that is kept of drawings, to be written to as one. */
export const writing = async (): Promise<Writing> =>
  (await shelves()).transaction<Written[], "readwrite">(
    ["drawings", "memory", "versions", "bodies"],
    "readwrite",
  );

/** Keeps a drawing as it is now, under a name or before something large. */
export async function keepVersion(
  drawing: Pick<StoredDrawing, "id" | "document">,
  why: VersionReason,
  name?: string,
  now = Date.now(),
): Promise<void> {
  const transaction = await writing();
  await put(transaction, headOf(drawing, why, now, name), drawing.document);
  await transaction.done;
}

/** Earlier versions of a drawing, newest first. */
export async function versionsOf(drawing: string): Promise<KeptVersion[]> {
  const heads = await (await shelves()).getAllFromIndex("versions", "drawing", drawing);
  return (heads as KeptVersion[]).sort((a, b) => b.at - a.at || b.id - a.id);
}

/** The drawing of an earlier version. */
export const versionBody = async (id: number): Promise<StillhotDocument | undefined> =>
  (await shelves()).get("bodies", id);

/** Forgets a version that was named. */
export async function dropVersion(id: number): Promise<void> {
  const transaction = await writing();
  await drop(transaction, [id]);
  await transaction.done;
}
