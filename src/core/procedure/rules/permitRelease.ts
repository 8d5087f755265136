import { citationOf } from "../../reference";
import { say } from "./say";
import { isSoleCrew } from "../job/isolation";
import { energizedOnTheJob, workConductors } from "../job/live";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { permitReasonForElement } from "../job/section";
import type { JobState } from "../job/state";
import { isSwitching } from "../../steps";

/** A job in which nothing is taken for dead: a new tap is put on, a link is renewed. Its permit holds the line as it is. */
const isLiveJob = (before: JobState): boolean =>
  workConductors(before).length === 0 && !before.played.some((it) => it.do === "ground" || it.do === "work");

/** A permit is released before its section is energized, and the section only by the system operator's word. */
export const permitRelease = defineRule({
  id: "permit-release",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    if (!isSwitching(step) || before.permit === "released") return undefined;
    if (energizedOnTheJob(before, after).length === 0) return undefined;
    const name = nameOf(after.document, step.element);
    if (before.permit === "held" && isLiveJob(before)) return undefined;
    if (before.permit === "held")
      return {
        where: step.element,
        message: say("rule.permit-release.held", { name }),
        help: say("rule.permit-release.help"),
      };
    const needed = permitReasonForElement(before.asFound, step.element);
    if (needed === undefined || before.operatorAsked > 0 || isSoleCrew(before, step.element))
      return undefined;
    return {
      where: step.element,
      message: say("rule.permit-release.word", { name, why: needed }),
      help: say("rule.permit-release.word.help"),
    };
  },
});
