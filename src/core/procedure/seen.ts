import type { StillhotDocument } from "../document";
import { assess, type Assessment } from "../hazard";
import type { JobState } from "./state";

interface Look {
  readonly tested: JobState["tested"];
  readonly barricaded: JobState["barricaded"];
  readonly assessment: Assessment;
}

const lastLook = new WeakMap<StillhotDocument, Look>();

/**
 * Everything that is known of the drawing as a job stands: one assessment a step, and none where a step changed neither
 * the drawing, nor what counts as tested, nor the barricades.
 */
export function seen({ document, tested, barricaded }: JobState): Assessment {
  const last = lastLook.get(document);
  if (last !== undefined && last.tested === tested && last.barricaded === barricaded) return last.assessment;
  const assessment = assess(document, { tested, barricaded });
  lastLook.set(document, { tested, barricaded, assessment });
  return assessment;
}
