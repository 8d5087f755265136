import type { Step } from "../../document";
import { systemAfterWork } from "./repair";
import { documentAfter } from "./standing";
import type { JobState } from "./state";

/** The drawing as the work leaves it. While hands are at it everything still stands as before. */
export function onceWorked(step: Step, state: JobState): JobState {
  if (step.do !== "work") return state;
  const system = systemAfterWork(state.document, step);
  return system === state.document.system ? state : { ...state, document: documentAfter(state, system) };
}

/** How the job stands before and after a step moves something: for work, under the hands and once it is done. */
export const movedAround = (
  step: Step,
  before: JobState,
  after: JobState,
): readonly [before: JobState, after: JobState] =>
  step.do === "work" ? [after, onceWorked(step, after)] : [before, after];
