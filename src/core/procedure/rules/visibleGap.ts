import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { hasVisibleGap } from "../job/isolation";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { seen } from "../job/seen";
import { isRelying } from "../../steps";
import { closes } from "../../hazard";

/** Isolation rests on a gap that one can see: a threat whose every closing is out of sight shows that it does not. */
export const visibleGap = defineRule({
  id: "visible-gap",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, _before, after) {
    if (!isRelying(step)) return undefined;
    const hidden = new Set<string>();
    for (const { threats } of Object.values(seen(after).workPoints))
      for (const { upsets } of threats) {
        const closings = upsets.filter(closes);
        if (closings.length > 0 && closings.every(({ element }) => !hasVisibleGap(after, element)))
          for (const { element } of closings) hidden.add(element);
      }
    return [...hidden].sort().map((id) => ({
      where: id,
      message: say("rule.visible-gap", { name: nameOf(after.document, id) }),
      help: say("rule.visible-gap.help", { name: nameOf(after.document, id) }),
    }));
  },
});
