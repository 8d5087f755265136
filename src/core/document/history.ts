import type { Patch } from "immer";
import { type Message, refuse, type Refusal, say } from "../terms";
import type { Change } from "./edits/change";
import { followSoundness } from "./check";
import { patched } from "./patching";
import { readValue } from "./read";
import { isUnreadable } from "./problem";
import type { StillhotDocument } from "./types";

/** One entry: plain JSON, so that a history can be kept beside its document and found again after a crash. */
interface Entry {
  readonly label: Message;
  readonly forward: readonly Patch[];
  readonly inverse: readonly Patch[];
  /** edits of the same gesture are one entry */
  readonly gesture?: string;
  /** letters of its patches as text, for the bound on memory */
  readonly size: number;
}

/** What was done to a document and can be taken back, and what was taken back and can be done again. */
export interface History {
  /** the last one done is the last */
  readonly done: readonly Entry[];
  /** the next one to do again is the last */
  readonly undone: readonly Entry[];
}

/** Of a drawing that nobody has edited yet. */
export const emptyHistory: History = { done: [], undone: [] };

/** Entries that are kept. */
const MOST_ENTRIES = 500;
/** Letters of all patches together: about 16 MB of memory. The newest entry is kept whatever its size. */
const MOST_LETTERS = 8_000_000;

/**
 * Adds a change that was just made. What had been undone is forgotten.
 *
 * @param gesture a name for the gesture under way: changes under the same name, one after the other, are one entry
 */
export function remember({ done }: History, change: Change, gesture?: string): History {
  const { label, forward, inverse } = change;
  const last = done.at(-1);
  if (last !== undefined && gesture !== undefined && last.gesture === gesture)
    return { done: bounded([...done.slice(0, -1), joined(last, change)]), undone: [] };
  const entry = sized({ label, forward, inverse, ...(gesture === undefined ? {} : { gesture }) });
  return { done: bounded([...done, entry]), undone: [] };
}

/** A history as it was kept; empty where anything of it is not what it should be. Whether its patches fit is told by `undo`. */
export const readHistory = (kept: unknown): History =>
  isRecord(kept) && isEntries(kept["done"]) && isEntries(kept["undone"])
    ? (kept as unknown as History)
    : emptyHistory;

const isRecord = (kept: unknown): kept is Record<string, unknown> =>
  typeof kept === "object" && kept !== null;

const isEntries = (kept: unknown): boolean =>
  Array.isArray(kept) &&
  kept.every(
    (it) =>
      isRecord(it) &&
      isRecord(it["label"]) &&
      typeof it["label"]["key"] === "string" &&
      isPatches(it["forward"]) &&
      isPatches(it["inverse"]) &&
      Number.isFinite(it["size"]),
  );

const isPatches = (kept: unknown): boolean =>
  Array.isArray(kept) &&
  kept.every((it) => isRecord(it) && typeof it["op"] === "string" && Array.isArray(it["path"]));

/** Takes the last edit back as `undo` does, where the history may be damaged; a refusal where what comes is no drawing. */
export const undoKept = (history: History, document: StillhotDocument): Moved | Refusal | undefined =>
  checked(() => undo(history, document));

/** Does an edit again as `redo` does, where the history may be damaged; a refusal where what comes is no drawing. */
export const redoKept = (history: History, document: StillhotDocument): Moved | Refusal | undefined =>
  checked(() => redo(history, document));

function checked(move: () => Moved | undefined): Moved | Refusal | undefined {
  try {
    const moved = move();
    if (moved === undefined || !isUnreadable(readValue(moved.document))) return moved;
  } catch {
    // Patches that fit nothing.
  }
  return refuse(say("edit.historyDamaged"));
}

/** A document after an undo or a redo, and which edit that was. */
export interface Moved {
  readonly history: History;
  readonly document: StillhotDocument;
  readonly label: Message;
}

/** Takes the last edit back; nothing where there is none. */
export function undo({ done, undone }: History, document: StillhotDocument): Moved | undefined {
  const entry = done.at(-1);
  if (entry === undefined) return undefined;
  return {
    history: { done: done.slice(0, -1), undone: [...undone, closed(entry)] },
    document: applied(document, entry.inverse),
    label: entry.label,
  };
}

/** Does the last edit that was taken back again; nothing where there is none. */
export function redo({ done, undone }: History, document: StillhotDocument): Moved | undefined {
  const entry = undone.at(-1);
  if (entry === undefined) return undefined;
  return {
    history: { done: [...done, entry], undone: undone.slice(0, -1) },
    document: applied(document, entry.forward),
    label: entry.label,
  };
}

function applied(before: StillhotDocument, patches: readonly Patch[]): StillhotDocument {
  const after = patched(before, patches);
  followSoundness(before, after, patches); // so that the next edit need not look at all of it
  return after;
}

/** Once taken back, a gesture is over: nothing more joins it. */
const closed = ({ label, forward, inverse, size }: Entry): Entry => ({ label, forward, inverse, size });

function joined(last: Entry, { label, forward, inverse }: Change): Entry {
  const base = { ...last, label };
  // A drag that replaces the same records again and again keeps where it began and where it ended.
  return replacesTheSame(last.forward, forward) && replacesTheSame(last.inverse, inverse)
    ? sized({ ...base, forward })
    : sized({ ...base, forward: [...last.forward, ...forward], inverse: [...inverse, ...last.inverse] });
}

function replacesTheSame(one: readonly Patch[], other: readonly Patch[]): boolean {
  const paths = (patches: readonly Patch[]) =>
    patches
      .map(({ path }) => path.join("/"))
      .sort()
      .join("\n");
  return [...one, ...other].every(({ op }) => op === "replace") && paths(one) === paths(other);
}

const sized = (entry: Omit<Entry, "size">): Entry => ({
  ...entry,
  size: JSON.stringify([entry.forward, entry.inverse]).length,
});

/** Forgets the oldest entries beyond the bounds. */
function bounded(entries: readonly Entry[]): readonly Entry[] {
  let letters = 0;
  let kept = 0;
  for (const { size } of entries.toReversed()) {
    letters += size;
    if (kept > 0 && (kept >= MOST_ENTRIES || letters > MOST_LETTERS)) break;
    kept++;
  }
  return entries.slice(entries.length - kept);
}
