import { COMMON_PRACTICE } from "../../reference";
import { say } from "../../terms";
import { degreesAcross, mismatchOf, voltsAcross } from "../effects/gap";
import { figure, nameOf } from "../job/names";
import { defineRule } from "./rule";

/** Two supplies are joined only phase to phase and close in angle. */
export const phaseCheck = defineRule({
  id: "phase-check",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const gap = mismatchOf(step, before, after);
    if (gap === undefined) return undefined;
    return {
      where: step.element!,
      message: say("rule.phase-check", {
        name: nameOf(after.document, step.element!),
        letter: gap.letter,
        degrees: figure(degreesAcross(gap)),
        volts: figure(voltsAcross(gap)),
      }),
      help: say("rule.phase-check.help"),
    };
  },
});
