import { settingsOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "../../terms";
import { ampsThrough, phasesMoved } from "../effects/gap";
import { figure, nameOf } from "../job/names";
import { defineRule } from "./rule";

/** A clamp goes on with the cutout beyond it open; the cutout then picks up the load. */
export const pickUpOrder = defineRule({
  id: "pick-up-order",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (step.do !== "attach") return undefined;
    const amps = ampsThrough(after, step.element, phasesMoved(step, before, after).closed);
    const { clampBreakAmps } = settingsOf(after.document);
    if (amps <= clampBreakAmps) return undefined;
    return {
      where: step.element!,
      message: say("rule.pick-up-order", {
        name: nameOf(after.document, step.element!),
        amps: figure(amps),
        limit: clampBreakAmps,
      }),
      help: say("rule.pick-up-order.help"),
    };
  },
});
