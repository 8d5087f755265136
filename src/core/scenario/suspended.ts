import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import type { StillhotDocument } from "../document";
import { isRefusal } from "../terms";
import { base64url, fromBase64url } from "../sheet/link";
import type { Action } from "./actions";
import { act, startAttempt } from "./act";
import type { Attempt } from "./attempt";

/** What of an attempt cannot be worked out again: who, when and how it began, and what was done. */
interface Suspended {
  readonly who: string;
  readonly startedAt: string;
  readonly mode: Attempt["mode"];
  readonly seed: number;
  /** actions with their seconds, rounded and by the clock */
  readonly did: readonly (readonly [action: Action, t: number, at?: number])[];
}

/** More than the actions of any attempt: a few letters must not grow into all of the memory. */
const MOST_BYTES = 1_000_000;

/** An attempt in few letters, for a learning system that keeps them: its actions alone, since a replay gives the rest. */
export function suspended({ who, startedAt, mode, seed, log }: Attempt): string {
  const did = log.flatMap((entry): Suspended["did"] =>
    entry.action === undefined
      ? []
      : [entry.at === undefined ? [entry.action, entry.t] : [entry.action, entry.t, entry.at]],
  );
  const text = JSON.stringify({ who, startedAt, mode, seed, did } satisfies Suspended);
  return base64url(deflateSync(strToU8(text), { level: 9 }));
}

/** The attempt at a scenario that these letters tell of; nothing where they are damaged, or are about another scenario. */
export function resumed(document: StillhotDocument, letters: string): Attempt | undefined {
  try {
    const bytes = fromBase64url(letters);
    if (bytes === undefined) return undefined;
    const text = inflateSync(bytes, { out: new Uint8Array(MOST_BYTES) });
    const { did, ...head } = JSON.parse(strFromU8(text)) as Suspended;
    let attempt = startAttempt(document, head);
    for (const [action, t, at] of did) {
      const acted = act(attempt, action, { t, ...(at === undefined ? {} : { at }) });
      if (isRefusal(acted)) return undefined;
      attempt = acted.attempt;
    }
    return attempt;
  } catch {
    return undefined;
  }
}
