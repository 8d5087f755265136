import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { defineRule } from "./rule";
import { isActing } from "../../steps";
import { placeOf } from "../job/places";

/** An order is said back to the one who gave it before anybody carries it out. */
export const repeatBack = defineRule({
  id: "repeat-back",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, before) {
    if (before.unrepeated === 0 || !isActing(step)) return undefined;
    return {
      where: placeOf(step),
      message: say("rule.repeat-back", { n: before.unrepeated }),
      help: say("rule.repeat-back.help"),
      marks: [{ step: before.unrepeated, why: say("mark.order") }],
    };
  },
});
