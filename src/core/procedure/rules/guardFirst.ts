import { isActing } from "../../steps";
import { isBarricaded } from "../../hazard";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { isFirst } from "../job/live";
import { nameOf } from "../job/names";
import { wiresDown } from "../job/wiresDown";
import { defineRule } from "./rule";

/**
 * A wire that is down is guarded before anything else is done. Told once, at the first thing that is done. How far people are
 * kept from it: at least 35 feet, by the public advice of the Electrical Safety Foundation; a utility's own rule may say more.
 */
export const guardFirst = defineRule({
  id: "guard-first",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before) {
    if (!isActing(step) || !isFirst(before, isActing)) return undefined;
    const { document, barricaded, asFound } = before;
    const isGuarded = (ends: readonly string[]) =>
      ends.some((end) => isBarricaded(document.system, barricaded, end));
    return wiresDown(asFound.system)
      .filter(({ ends }) => !isGuarded(ends))
      .map(({ id }) => ({
        where: id,
        message: say("rule.guard-first", { name: nameOf(document, id) }),
        help: say("rule.guard-first.help"),
      }));
  },
});
