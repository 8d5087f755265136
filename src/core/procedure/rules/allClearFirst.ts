import { citationOf } from "../../reference";
import { say } from "./say";
import { energizedOnTheJob } from "../job/live";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { isSwitching } from "../../steps";

/** Nobody is missing before the line is energized: an all-clear after the last ground came off, and its repeat-back. */
export const allClearFirst = defineRule({
  id: "all-clear-first",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    const last = Math.max(before.lastWork, before.lastGround, before.lastUnground);
    if (!isSwitching(step) || last === 0 || energizedOnTheJob(before, after).length === 0) return undefined;
    const isGiven = before.lastAllClear > last;
    if (isGiven && before.allClearRepeated) return undefined;
    return {
      where: step.element,
      message: say(isGiven ? "rule.all-clear-first.unrepeated" : "rule.all-clear-first", {
        name: nameOf(after.document, step.element),
      }),
      help: say("rule.all-clear-first.help"),
      marks: [
        { step: last, why: say(last === before.lastUnground ? "mark.lastUnground" : "mark.onTheLine") },
      ],
    };
  },
});
