import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { defineRule } from "./rule";
import { isTelling } from "../../steps";
import { isOnCable } from "../effects/spiking";
import { placeOf } from "../job/places";

/** A detector that shows nothing may be broken: it is proven on something live right before a test and right after it. */
export const detectorCheck = defineRule({
  id: "detector-check",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    if (isOnCable(step)) return undefined;
    if (step.do === "test")
      // Volts that are wanted prove the detector by themselves.
      return before.detector === "unproven" && step.expect !== "live"
        ? {
            where: placeOf(step),
            message: say("rule.detector-check.before"),
            help: say("rule.detector-check.help"),
          }
        : undefined;
    const isBetween = step.do === "check-detector" || step.do === "inspect" || isTelling(step);
    if (isBetween || before.detector !== "to-be-proven-again") return undefined;
    return {
      where: placeOf(step),
      severity: "warning",
      message: say("rule.detector-check.after", { verb: say(`doing.${step.do}`) }),
      help: say("rule.detector-check.help"),
    };
  },
  atEnd(state) {
    if (state.detector !== "to-be-proven-again") return undefined;
    return {
      where: "job",
      severity: "warning",
      message: say("rule.detector-check.end"),
      help: say("rule.detector-check.help"),
    };
  },
});
