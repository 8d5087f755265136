import { conductorNames } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "../../terms";
import { figure } from "../job/names";
import { defineRule } from "./rule";
import { isLooking } from "../../steps";

/** A test that shows voltage ends the plan: the crew stops and looks again before it does anything else. */
export const testLive = defineRule({
  id: "test-live",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    const [first] = before.shownLive;
    if (first === undefined || isLooking(step)) return undefined;
    return {
      where: first,
      message: say("rule.test-live", {
        where: conductorNames(before.document, before.shownLive),
        volts: figure(before.readings.get(first)?.volts ?? 0),
        verb: say(`doing.${step.do}`),
      }),
      help: say("rule.test-live.help"),
    };
  },
});
