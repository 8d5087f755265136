import { jobOf, type Step } from "../../document";
import type { Finding, WorkPointId } from "../../terms";
import { asItStands, seen } from "./seen";
import type { JobState } from "./state";
import { isLiveWork } from "../../steps";

/** Findings of one rule that the assessment of the drawing already has, about the place where work begins. */
export function carriedToWork(rule: string, step: Step, after: JobState): readonly Finding[] {
  if (step.do !== "work" || isLiveWork(step)) return [];
  const ids = Object.keys(jobOf(after.document).workPoints) as WorkPointId[];
  return seen(after).findings.filter(
    (it) => it.rule === rule && (it.where === step.at || !ids.includes(it.where as WorkPointId)),
  );
}

/** Findings of one rule that a step has brought about, of those about the drawing and not about a work point. */
export function carriedAsNew(rule: string, before: JobState, after: JobState): readonly Finding[] {
  if (before.document === after.document) return [];
  const was = new Set(
    asItStands(before)
      .findings.filter((it) => it.rule === rule)
      .map(({ where }) => where),
  );
  return asItStands(after).findings.filter((it) => it.rule === rule && !was.has(it.where));
}
