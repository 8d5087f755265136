import { elementsOfKind } from "../../document";
import { isActing } from "../../steps";
import { isBarricaded } from "../../hazard";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { isFirst } from "../job/live";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";

/** A wire that is down is guarded before anything else is done. Told once, at the first thing that is done. */
export const guardFirst = defineRule({
  id: "guard-first",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    if (!isActing(step) || !isFirst(before, isActing)) return undefined;
    const { document, barricaded, asFound } = before;
    const isGuarded = (ends: readonly string[]) =>
      ends.some((end) => isBarricaded(document.system, barricaded, end));
    return elementsOfKind(asFound.system, "span")
      .filter(
        ([, it]) =>
          it.construction !== "cable" && it.parted.replace("N", "") !== "" && !isGuarded([it.from, it.to]),
      )
      .map(([id]) => ({
        where: id,
        message: say("rule.guard-first", { name: nameOf(document, id) }),
        help: say("rule.guard-first.help"),
      }));
  },
});
