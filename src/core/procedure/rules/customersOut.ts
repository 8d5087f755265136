import { elementsOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { isSupplied } from "../job/live";
import { nameOf, namesOf } from "../job/names";
import { defineRule } from "./rule";
import { isSwitching } from "../../steps";

/** How many customers a step leaves without supply, and which of them cannot do without. */
export const customersOut = defineRule({
  id: "customers-out",
  severity: "note",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (!isSwitching(step) || before.document === after.document) return undefined;
    const dropped = elementsOfKind(after.document.system, "load").flatMap(([id, it]) =>
      it.customers > 0 && isSupplied(before, it.at, it.phases) && !isSupplied(after, it.at, it.phases)
        ? [{ id, ...it }]
        : [],
    );
    if (dropped.length === 0) return undefined;
    const count = dropped.reduce((sum, it) => sum + it.customers, 0);
    const critical = dropped.filter((it) => it.critical).map(({ id }) => nameOf(after.document, id));
    return {
      where: step.element,
      message: say(critical.length === 0 ? "rule.customers-out" : "rule.customers-out.critical", {
        name: nameOf(after.document, step.element),
        count,
        critical: namesOf(critical, 10),
      }),
      ...(critical.length === 0 ? {} : { help: say("rule.customers-out.help") }),
    };
  },
});
