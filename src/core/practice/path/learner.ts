import { type Message, refuse, type Refusal, say } from "../../terms";
import { isDay } from "./days";

/** One thing that a learner did, as it is kept: never changed, only added to. */
export interface Tried {
  /** like no other, on whatever device it was done */
  readonly id: string;
  /** ISO 8601, in UTC */
  readonly at: string;
  /** the day by the calendar of the learner, `2026-03-31` */
  readonly day: string;
  /** what it was, by its name on the path: `drill/live/2` */
  readonly item: string;
  readonly right: boolean;
  /** how much of it was right, 0 to 1 */
  readonly share: number;
  /** how much of each task it was, where it was about several */
  readonly shares?: Readonly<Record<string, number>>;
}

/** All that a learner did, as a file to carry to another device. */
export interface LearnerRecord {
  readonly format: "stillhot-learner";
  readonly formatVersion: 1;
  readonly tried: readonly Tried[];
}

/** What was done as one file's text: the same for the same list, in whatever order it came. */
export const writeLearner = (tried: readonly Tried[]): string =>
  `${JSON.stringify({ format: "stillhot-learner", formatVersion: 1, tried: mergedTried(tried) } satisfies LearnerRecord, undefined, 2)}\n`;

/** Reads a learner's file. Refused where it is none, or where what it says of anything cannot be used. */
export function readLearner(text: string): readonly Tried[] | Refusal {
  let file: Partial<LearnerRecord> | null;
  try {
    file = JSON.parse(text) as Partial<LearnerRecord> | null;
  } catch {
    return refuse(say("path.notARecord"));
  }
  if (file?.format !== "stillhot-learner" || !Array.isArray(file.tried))
    return refuse(say("path.notARecord"));
  if (file.formatVersion !== 1) return refuse(say("path.newerRecord"));
  const spoiled = file.tried.findIndex((it) => !isTried(it));
  return spoiled === -1 ? mergedTried(file.tried) : refuse(brokenAt(spoiled + 1));
}

const brokenAt = (n: number): Message => say("path.brokenRecord", { n });

const isShare = (it: unknown): boolean => typeof it === "number" && it >= 0 && it <= 1;

/** Whether something that was kept or handed over is what a learner did. */
export function isTried(it: unknown): it is Tried {
  const { id, at, day, item, right, share, shares = {} } = (it ?? {}) as Partial<Tried>;
  const isText = [id, at, item].every((text) => typeof text === "string" && text !== "");
  const areShares = typeof shares === "object" && shares !== null && Object.values(shares).every(isShare);
  return isText && isDay(day) && typeof right === "boolean" && isShare(share) && areShares;
}

/**
 * Two lists as one, in the order in which it was done: nothing is lost, nothing stands twice, and it does not matter which
 * of the two devices it is done on, or how often.
 */
export function mergedTried(...lists: readonly (readonly Tried[])[]): readonly Tried[] {
  const byId = new Map<string, Tried>();
  for (const it of lists.flat()) {
    const other = byId.get(it.id);
    // The same happens on both devices, should a file have been edited.
    if (other === undefined || JSON.stringify(it) < JSON.stringify(other)) byId.set(it.id, it);
  }
  const key = ({ at, id }: Tried) => `${at} ${id}`;
  return [...byId.values()].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}
