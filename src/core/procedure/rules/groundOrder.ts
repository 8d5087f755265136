import { citationOf } from "../../reference";
import { say } from "./say";
import { groundIdOf } from "../job/positions";
import { setName } from "../job/names";
import { defineRule } from "./rule";

/** On: the neutral or earth end first, then the line end with a stick. Off: the line end first. */
export const groundOrder = defineRule({
  id: "ground-order",
  severity: "danger",
  citation: citationOf("n6-connect"),
  check(step, before) {
    if (step.do === "ground" && step.first === "phase") {
      const set = groundIdOf(before.document.system, step);
      return {
        where: set,
        message: say("rule.ground-order.on", { set: setName(before.document, set) }),
        help: say("rule.ground-order.on.help"),
      };
    }
    if (step.do === "unground" && step.first === "neutral")
      return {
        where: step.element,
        citation: citationOf("n6-remove"),
        message: say("rule.ground-order.off", { set: setName(before.document, step.element) }),
        help: say("rule.ground-order.off.help"),
      };
    return undefined;
  },
});
