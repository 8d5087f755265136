import { carriesAmps } from "../../devices";
import { settingsOf } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { shortsEnergized } from "../effects/consequence";
import { ampsThrough, phasesMoved } from "../effects/gap";
import { elementOf, figure, nameOf } from "../job/names";
import { defineRule } from "./rule";
import { isClosing } from "../../steps";

/** What closes a circuit is made to carry its current. A fault is another rule's. */
export const closeRating = defineRule({
  id: "close-rating",
  severity: "warning",
  citation: citationOf("close-under-load"),
  check(step, before, after) {
    const element = elementOf(after.document.system, step.element);
    if (!isClosing(step) || element === undefined || shortsEnergized(before, after).length > 0)
      return undefined;
    const carries = carriesAmps(element, settingsOf(after.document));
    const amps = ampsThrough(after, step.element, phasesMoved(step, before, after).closed);
    if (amps <= carries) return undefined;
    return {
      where: step.element,
      message: say("rule.close-rating", {
        name: nameOf(after.document, step.element),
        amps: figure(amps),
        limit: figure(carries),
      }),
      help: say("rule.close-rating.help"),
    };
  },
});
