import { citationOf } from "../../reference";
import { say } from "./say";
import { setName, workPlaces } from "../job/names";
import { defineRule } from "./rule";

/** Everybody is clear of the line before a ground comes off: it is what has been holding them. */
export const clearBeforeUngrounding = defineRule({
  id: "clear-before-ungrounding",
  severity: "danger",
  citation: citationOf("m3-x-release"),
  check(step, before) {
    if (step.do !== "unground" || before.workUnderWay.size === 0) return undefined;
    return {
      where: step.element,
      message: say("rule.clear-before-ungrounding", {
        set: setName(before.document, step.element),
        where: workPlaces(before.document, before.workUnderWay),
      }),
      help: say("rule.clear-before-ungrounding.help"),
      marks: [{ step: before.lastWork, why: say("mark.workBegan") }],
    };
  },
});
