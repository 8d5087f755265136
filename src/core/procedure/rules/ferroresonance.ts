import { say } from "./say";
import { ferroresonanceRisk } from "../effects/ferroresonance";
import { figure, nameOf } from "../job/names";
import { defineRule } from "./rule";

/**
 * Single-pole switching of a bank with an ungrounded primary over cable and with little load can ring up its volts. A
 * grounded star is no absolute safeguard: that is a note.
 */
export const ferroresonance = defineRule({
  id: "ferroresonance",
  severity: "warning",
  citation: "IEEE C57.105 (from memory)",
  check(step, before, after) {
    const risk = ferroresonanceRisk(step, before, after);
    if (risk === undefined) return undefined;
    return {
      where: step.element!,
      ...(risk.isGrounded ? { severity: "note" as const } : {}),
      message: say(risk.isGrounded ? "rule.ferroresonance.grounded" : "rule.ferroresonance", {
        name: nameOf(after.document, step.element!),
        bank: nameOf(after.document, risk.bank),
        cable: nameOf(after.document, risk.cable),
        percent: figure(risk.loadPercent),
      }),
      help: say("rule.ferroresonance.help"),
    };
  },
});
