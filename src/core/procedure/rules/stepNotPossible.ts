import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { defineRule } from "./rule";
import { placeOf } from "../job/places";

/** A step that cannot be done as things stand, or that changes nothing: the plan and the poles differ. */
export const stepNotPossible = defineRule({
  id: "step-not-possible",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, _before, after) {
    const why = after.notDone;
    if (why === undefined) return undefined;
    const changesNothing = why.key.startsWith("step.already") || why.key.startsWith("step.not.");
    return {
      where: placeOf(step),
      severity: changesNothing ? "note" : "warning",
      message: why,
      help: say("rule.step-not-possible.help"),
    };
  },
});
