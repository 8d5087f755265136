import { jobOf, type StillhotDocument } from "../../src/core/document";
import { beginJob, planDocument, play } from "../../src/core/procedure";

/** A drawing as it stands when work begins, by its own order of steps or by the planned one: opened, tagged, grounded. */
export function atWork(document: StillhotDocument): StillhotDocument {
  const own = jobOf(document).steps ?? [];
  const steps = own.length > 0 ? own : (jobOf(planDocument(document)).steps ?? []);
  const begins = steps.findIndex((it) => it.do === "work");
  let state = beginJob(document);
  for (const step of steps.slice(0, begins)) state = play(state, step).state;
  return state.document;
}
