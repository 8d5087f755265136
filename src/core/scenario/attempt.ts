import { asDrawn, fingerprintBytes, perObject, type StillhotDocument } from "../document";
import type { LogEntry } from "./log";
import { sha256 } from "./sha256";

/** What an attempt is an attempt at, and by whom. The log's first hash is taken over it. */
export interface AttemptHead {
  readonly format: "stillhot-attempt";
  readonly formatVersion: 1;
  /** a name typed in, or empty: it stays on the device unless the file is handed on */
  readonly who: string;
  /** when it began, as whoever has a clock says it: ISO 8601, or empty */
  readonly startedAt: string;
  readonly mode: "practice" | "exam";
  readonly seed: number;
  /** of the scenario's file */
  readonly fingerprint: string;
  /** the attempt that this one branches off from: the hash of the entry up to which they are the same */
  readonly forkOf?: string;
}

/** One attempt at a scenario: plain JSON, only ever added to. */
export interface Attempt extends AttemptHead {
  /** the whole scenario, so that an attempt can be opened by itself */
  readonly document: StillhotDocument;
  readonly log: readonly LogEntry[];
  /** the hash of the last entry, of the head where there is none */
  readonly checksum: string;
}

/** An attempt after an action, and the entries that the action added: what the apprentice is shown. */
export interface Acted {
  readonly attempt: Attempt;
  readonly entries: readonly LogEntry[];
}

/** SHA-256 over the canonical JSON of a document, whatever was done of its job. */
export const fingerprintOf: (document: StillhotDocument) => string = perObject((document: StillhotDocument) =>
  sha256(fingerprintBytes(asDrawn(document))),
);

/** The head of an attempt: everything but the document, the log and its checksum. */
export function headOf({ document: _, log: _log, checksum: _checksum, ...head }: Attempt): AttemptHead {
  return head;
}

/** Whether an attempt is another one with more done, or just as much: an attempt is only ever added to. */
export function goesOnFrom(attempt: Attempt, earlier: Attempt): boolean {
  if (JSON.stringify(headOf(attempt)) !== JSON.stringify(headOf(earlier))) return false;
  const last = earlier.log.at(-1);
  return last === undefined || attempt.log[earlier.log.length - 1]?.hash === last.hash;
}

/** Seconds that an attempt took: by the clock where one ran, else by the round figures. */
export const secondsOf = ({ log }: Attempt): number => {
  const last = log.at(-1);
  return last?.at ?? last?.t ?? 0;
};
