import { jobOf, perObject, type StillhotDocument } from "../../document";
import type { Assessment } from "../../hazard";
import { play, type PlayedStep } from "./play";
import type { RehearsalFinding } from "../rules/rule";
import { findingsAtEnd } from "../rules";
import { seen } from "../job/seen";
import { beginJob, type JobState } from "../job/state";

/** A whole job played from the beginning: every step with its findings, and how it all stands at the end. */
export interface Rehearsal {
  readonly document: StillhotDocument;
  /** no step gave a danger or a warning */
  readonly ok: boolean;
  readonly begin: JobState;
  readonly steps: readonly PlayedStep[];
  /** what is wrong at the end */
  readonly findings: readonly RehearsalFinding[];
  /** the drawing after the last step */
  readonly final: Assessment;
}

/** Plays the steps of a document's job, remembered for each document. Whether a step is marked done does not matter. */
export const rehearse: (document: StillhotDocument) => Rehearsal = perObject((document: StillhotDocument) => {
  const begin = beginJob(document);
  const steps: PlayedStep[] = [];
  for (const step of jobOf(document).steps) steps.push(play(steps.at(-1)?.state ?? begin, step));
  const end = steps.at(-1)?.state ?? begin;
  return {
    document,
    ok: !steps.some(({ findings }) => findings.some(({ severity }) => severity !== "note")),
    begin,
    steps,
    findings: findingsAtEnd(end),
    final: seen(end),
  };
});
