import { canonicalText } from "../document";
import type { Consequence, RehearsalFinding } from "../procedure";
import type { Verdict } from "../hazard";
import type { Message } from "../terms";
import type { Action } from "./actions";
import { sha256 } from "./sha256";

/** How a work point stands. */
export interface LoggedVerdict {
  readonly verdict: Verdict;
  readonly margin: number | null;
  /** what the worker would feel by the threats of the least strength [V] */
  readonly exposureVolts: number;
}

/** How a prediction compares with the truth. */
export interface PredictionResult {
  /** live and said to be */
  readonly right: readonly string[];
  /** live and not said to be */
  readonly missed: readonly string[];
  /** said to be live, and not */
  readonly wrong: readonly string[];
  readonly feedersRight: readonly string[];
  readonly feedersMissed: readonly string[];
  readonly feedersWrong: readonly string[];
}

/** What an entry of the log brought about. Everything that a debrief needs stands in it, so that no step is played again. */
export interface EntryResult {
  /** false where the hands could not do it, or the operator did not accept it */
  readonly done: boolean;
  /** what was seen, heard or felt */
  readonly shown: readonly Message[];
  /** rules broken, as things truly stand */
  readonly findings?: readonly RehearsalFinding[];
  /** rules broken, as things stand by what is known: what may be said during practice */
  readonly coached?: readonly RehearsalFinding[];
  readonly consequence?: Consequence;
  /** work points as they truly stand after it */
  readonly workPoints?: Readonly<Record<string, LoggedVerdict>>;
  /** work points as somebody would judge them who knows only what is known */
  readonly believed?: Readonly<Record<string, LoggedVerdict>>;
  /** hidden facts that came to light */
  readonly reveals?: readonly string[];
  /** the inject that this entry is */
  readonly inject?: string;
  /** what was said to be live, before anything was operated: what points hang on */
  readonly prediction?: PredictionResult;
  /** what was said to be live once something had been operated: for practice alone */
  readonly foreseen?: PredictionResult;
  /** at the end: the line is in service */
  readonly restored?: boolean;
}

/** One entry of the log. Nothing in it is ever changed. */
export interface LogEntry {
  /** from 1 */
  readonly n: number;
  /** seconds since the beginning, when it was done */
  readonly t: number;
  /**
   * seconds that somebody had been at it by a real clock, interruptions left out; nothing where nobody measured. It is
   * written down and never asked for again: a replay does not depend on it.
   */
  readonly at?: number;
  readonly actor: "learner" | "operator" | "scenario";
  readonly verb: string;
  readonly object: string;
  /** what the apprentice did; entries without one follow from it */
  readonly action?: Action;
  readonly result: EntryResult;
  /** of the drawing and the job as they truly stand after it */
  readonly stateHash: string;
  /** of this entry and the hash before it */
  readonly hash: string;
}

/** The hash of an entry: it holds the whole log before it, so that no entry can be changed, taken out or put in unseen. */
export const chained = (before: string, entry: Omit<LogEntry, "hash">): string =>
  sha256(before + canonicalText(entry));

/** The first entry at which a log is not what was written, 0 for its head; nothing where it is whole. */
export function firstBreak(head: unknown, log: readonly LogEntry[], checksum: string): number | undefined {
  let hash = sha256(canonicalText(head));
  for (const [index, { hash: written, ...entry }] of log.entries()) {
    hash = chained(hash, entry);
    if (entry.n !== index + 1 || hash !== written) return index + 1;
  }
  return hash === checksum ? undefined : log.length;
}

/** A value as JSON gives it back: what is not there is left out, and a number that JSON has no word for is a word. */
export function plain<Value>(value: Value): Value {
  if (typeof value === "number") return (Number.isFinite(value) ? value + 0 : String(value)) as Value;
  if (Array.isArray(value)) return value.map((it: unknown) => plain(it)) as Value;
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, it]) => it !== undefined)
      .map(([key, it]) => [key, plain(it as unknown)]),
  ) as Value;
}
