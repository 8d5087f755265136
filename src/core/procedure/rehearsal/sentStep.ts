import type { Patch } from "immer";
import { patched, type StillhotDocument } from "../../document";
import type { JsonObject } from "../../terms";
import { documentAfter } from "../job/standing";
import type { JobState } from "../job/state";
import type { PlayedStep } from "./play";

/** A step that was played elsewhere, as it is sent: what it changed of the drawing instead of the drawing. */
export interface SentStep extends Omit<PlayedStep, "state"> {
  readonly state: Omit<JobState, "document" | "asFound" | "played">;
  readonly changes: readonly Patch[];
}

/** @param before how the job stood before the step */
export function sentStep(before: JobState, { state, ...played }: PlayedStep): SentStep {
  const { document, asFound: _, played: __, ...rest } = state;
  return { ...played, state: rest, changes: changesBetween(before.document, document) };
}

/**
 * The same step where the job before it is known too. What is remembered of that drawing serves for the one after it.
 *
 * @param before how the job stood before the step
 */
export function receivedStep(before: JobState, { state, changes, ...sent }: SentStep): PlayedStep {
  const { asFound, document } = before;
  const standing = changes.length === 0 ? document : documentAfter(before, patched(document, changes).system);
  const played = [...before.played, sent.step];
  return { ...sent, state: { ...state, document: standing, asFound, played } };
}

const KINDS = ["structures", "points", "elements"] as const;

/** The records in which two drawings of one job differ: a step changes nothing else. */
function changesBetween(before: StillhotDocument, after: StillhotDocument): Patch[] {
  return KINDS.flatMap((kind) => {
    const were: Readonly<Record<string, JsonObject>> = before.system[kind] ?? {};
    const are: Readonly<Record<string, JsonObject>> = after.system[kind] ?? {};
    if (were === are) return [];
    if (before.system[kind] === undefined) return [{ op: "add", path: ["system", kind], value: are }];
    const gone = Object.keys(were).filter((id) => !Object.hasOwn(are, id));
    const put = Object.keys(are).filter((id) => are[id] !== were[id]);
    return [
      ...gone.map((id): Patch => ({ op: "remove", path: ["system", kind, id] })),
      ...put.map((id): Patch => ({
        op: Object.hasOwn(were, id) ? "replace" : "add",
        path: ["system", kind, id],
        value: are[id],
      })),
    ];
  });
}
