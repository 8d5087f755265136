import { elementOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";

/** A customer's machine is the customer's: the crew stops it or cuts it off, and does not start it. */
export const customersMachine = defineRule({
  id: "customers-machine",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    if (step.do !== "start") return undefined;
    if (elementOfKind(before.document.system, step.element, "generator") === undefined) return undefined;
    return {
      where: step.element,
      message: say("rule.customers-machine", { name: nameOf(before.document, step.element) }),
      help: say("rule.customers-machine.help"),
    };
  },
});
