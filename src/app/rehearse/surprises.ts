import { isOpening, type SeenInstead, type Step } from "../../core";

/** What may be found in place of what a step expects, the worst first; none where a step finds nothing out. */
export function surprisesOf(step: Step): readonly SeenInstead[] {
  if (step.do === "test") return step.expect === "live" ? ["no-voltage", "differs"] : ["voltage", "differs"];
  if (step.do === "inspect" || step.do === "secure") return ["unsound", "tag", "differs"];
  if (isOpening(step)) return ["stuck", "tag", "unsound", "differs"];
  return [];
}
