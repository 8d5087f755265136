import { isActing, isOpening, type SeenInstead, type Step } from "../../core";

/** What may be found in place of what a step expects, the worst first; none where a step finds nothing out. */
export function surprisesOf(step: Step): readonly SeenInstead[] {
  if (step.do === "check-detector") return ["silent"];
  if (step.do === "test") return step.expect === "live" ? ["no-voltage", "differs"] : ["voltage", "differs"];
  // An arc at the clamp, or a tingle in the hand, is voltage too.
  if (step.do === "ground" || step.do === "work") return ["voltage", "unsound", "differs"];
  if (step.do === "inspect" || step.do === "secure") return ["unsound", "tag", "differs"];
  if (isOpening(step)) return ["stuck", "tag", "unsound", "differs"];
  return isActing(step) ? ["tag", "unsound", "differs"] : [];
}
