import { citationOf } from "../../reference";
import { say } from "./say";
import { defineRule } from "./rule";
import { isActing } from "../../steps";
import { placeOf } from "../job/places";

/** Another briefing is held when something changes that could affect safety: the plan, or what was found. */
export const briefAgain = defineRule({
  id: "brief-again",
  severity: "warning",
  citation: citationOf("briefing-count"),
  check(step, before) {
    if (before.briefAgain === undefined || !isActing(step)) return undefined;
    return {
      where: placeOf(step),
      message: say("rule.brief-again", { why: before.briefAgain }),
      help: say("rule.brief-again.help"),
    };
  },
});
