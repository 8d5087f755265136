import { jobOf } from "../../document";
import { citationOf } from "../../reference";
import { type ElementId } from "../../terms";
import { say } from "./say";
import { isSoleCrew } from "../job/isolation";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { permitReasonForElement, permitReasonForWork } from "../job/section";
import { isSwitching } from "../../steps";

/**
 * A line section is operated or worked only under a permit that is held. A transformer's own tap needs none where no
 * other feed is drawn. Once the permit is released, what is switched is switched at the operator's word.
 */
export const permitFirst = defineRule({
  id: "permit-first",
  severity: "danger",
  citation: citationOf("m3-i-request"),
  check(step, before, after) {
    if (step.do === "receive-permit" && before.permit !== "requested")
      return {
        where: "job",
        severity: "note",
        message: say("rule.permit-first.unrequested"),
        help: say("rule.permit-first.help"),
      };
    if (before.permit === "held" || !(isSwitching(step) || step.do === "work")) return undefined;
    if (before.permit === "released" && isSwitching(step)) return undefined;
    const workPoint = step.do === "work" ? jobOf(before.document).workPoints[step.at] : undefined;
    const why =
      workPoint === undefined
        ? permitReasonForElement(before.asFound, step.element as ElementId)
        : permitReasonForWork(before.asFound, workPoint);
    if (why === undefined) return undefined;
    const moved = isSwitching(step) ? (step.element as ElementId | undefined) : undefined;
    if ([before, after].every((it) => isSoleCrew(it, moved))) return undefined;
    const where = step.do === "work" ? step.at : step.element;
    return {
      where,
      message: say(step.do === "work" ? "rule.permit-first.work" : "rule.permit-first", {
        name: nameOf(before.document, workPoint?.at ?? where),
        why,
      }),
      help: say("rule.permit-first.help"),
    };
  },
});
