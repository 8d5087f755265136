import { perObject, type Step, type StillhotDocument } from "../../document";
import { beginJob } from "../job/state";
import { play, type PlayedStep } from "../rehearsal/play";
import type { PlannedStep } from "./types";

interface Prefix {
  readonly played: PlayedStep | undefined;
  readonly next: Map<string, Prefix>;
}

/** Orders that begin alike are played once as far as they are alike. */
const beginnings = perObject((_document: StillhotDocument): Prefix => ({
  played: undefined,
  next: new Map(),
}));

/**
 * Plays steps one after the other, as far as whoever asks goes on. What was played before of the same drawing is not
 * played again.
 */
export function* playing(
  document: StillhotDocument,
  steps: readonly (Step | PlannedStep)[],
): Generator<PlayedStep> {
  let at = beginnings(document);
  let state = beginJob(document);
  for (const planned of steps) {
    const step = withoutReason(planned);
    const key = JSON.stringify(step);
    let next = at.next.get(key);
    if (next === undefined) at.next.set(key, (next = { played: play(state, step), next: new Map() }));
    yield next.played!;
    state = next.played!.state;
    at = next;
  }
}

function withoutReason(step: Step | PlannedStep): Step {
  const { why: _why, ...played } = step as PlannedStep;
  return played;
}
