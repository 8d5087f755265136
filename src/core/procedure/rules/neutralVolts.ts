import { COMMON_PRACTICE } from "../../reference";
import { carriedAsNew, carriedToWork } from "../carried";
import { defineRule } from "../rule";

/** A neutral that stands at a dangerous voltage is said where a step brings it about, and again when work begins. */
export const neutralVolts = defineRule({
  id: "neutral-volts",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check: (step, before, after) =>
    step.do === "work"
      ? carriedToWork("neutral-volts", step, after)
      : carriedAsNew("neutral-volts", before, after),
});
