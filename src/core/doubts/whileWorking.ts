import { jobOf, perObject, type StillhotDocument } from "../document";
import { advance, beginJob, type JobState } from "../procedure";
import type { ConductorId, WorkPointId } from "../terms";

/** How the drawing stands when hands go to the work, and what was tested by then. */
export interface WhileWorking {
  readonly document: StillhotDocument;
  readonly tested: ReadonlySet<ConductorId>;
  /** things that the crew has had its hands on by then: how they stand it has seen */
  readonly handled: ReadonlySet<string>;
}

/**
 * How a drawing stands when the order of steps has its hands at a work point: just before the first step of work there,
 * or else after the last ground that goes on. Nothing where the order has neither.
 */
export function whileWorking(document: StillhotDocument, id: WorkPointId): WhileWorking | undefined {
  const { steps } = jobOf(document);
  const work = steps.findIndex((it) => it.do === "work" && it.at === id);
  const last = work === -1 ? steps.findLastIndex((it) => it.do === "ground") : work - 1;
  const state = statesOf(document)[last];
  if (state === undefined) return undefined;
  const handled = new Set(state.played.flatMap(({ element }) => element ?? []));
  return { document: state.document, tested: state.tested, handled };
}

/** How the job stands after each step. */
const statesOf = perObject((document: StillhotDocument): readonly JobState[] => {
  const states: JobState[] = [];
  for (const step of jobOf(document).steps) states.push(advance(states.at(-1) ?? beginJob(document), step));
  return states;
});
