import { MOST_LOOKS } from "../tolerances";
import { jobOf, perObject, type StillhotDocument, type System } from "../../document";
import { assess, type Assessment, assessWithoutWork } from "../../hazard";
import type { JobState } from "./state";

/**
 * Everything that is known of the drawing as a job stands: one assessment for each way in which things stand, and none
 * where a step changed neither the drawing, nor what counts as tested, nor the barricades.
 */
export function seen(state: JobState): Assessment {
  const { document, tested, barricaded } = state;
  const looks = looksAt(assessedFor(document));
  const key = `${[...tested].sort().join()}|${[...barricaded].sort().join()}`;
  const found = looks.get(key);
  if (found !== undefined) return found;
  if (looks.size >= MOST_LOOKS) looks.clear();
  const fresh = assess(assessedFor(document), { tested, barricaded });
  looks.set(key, fresh);
  return fresh;
}

/** States, volts and currents alone: the threats, which take far longer, are not sought for them. */
export const asItStands = ({
  document,
}: Pick<JobState, "document">): Pick<Assessment, "conductors" | "elements" | "findings"> =>
  standingOfDocument(assessedFor(document));

const standingOfDocument = perObject(assessWithoutWork);

const looksAt = perObject((_document: StillhotDocument) => new Map<string, Assessment>());

const assessed = perObject((_system: System): StillhotDocument[] => []);

/**
 * The document that stands for all which differ in nothing that an assessment sees: another order of the plan's steps,
 * another title. What was known before an edit of the plan is then known after it.
 */
const assessedFor = perObject((document: StillhotDocument): StillhotDocument => {
  const known = assessed(document.system);
  const { workPoints } = jobOf(document);
  const found = known.find((it) => it.settings === document.settings && jobOf(it).workPoints === workPoints);
  if (found !== undefined) return found;
  known.push(document);
  return document;
});
