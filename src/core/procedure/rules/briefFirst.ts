import { citationOf } from "../../reference";
import { say } from "./say";
import { isFirst } from "../job/live";
import { defineRule } from "./rule";
import { isActing } from "../../steps";
import { placeOf } from "../job/places";

/** The employee in charge briefs the crew before the job starts. Told once, at the first thing that is done. */
export const briefFirst = defineRule({
  id: "brief-first",
  severity: "warning",
  citation: citationOf("briefing-hold"),
  check(step, before) {
    if (before.briefed || !isActing(step) || !isFirst(before, isActing)) return undefined;
    return { where: placeOf(step), message: say("rule.brief-first"), help: say("rule.brief-first.help") };
  },
});
