import { NO_AMPS } from "../tolerances";
import { citationOf } from "../../reference";
import { say } from "./say";
import { breakingsOf, worstOf } from "../effects/breaking";
import { figure, letterIn, nameOf } from "../job/names";
import { defineRule } from "./rule";

/** The current is within the rating of the tool, arc chute, elbow or switch that breaks it. */
export const loadBreakRating = defineRule({
  id: "load-break-rating",
  severity: "danger",
  citation: citationOf("open-under-load"),
  check(step, before, after) {
    const worst = worstOf(
      breakingsOf(step, before, after).filter(
        ({ amps, limit }) =>
          ["tool", "arc-chute", "rated"].includes(limit.basis) && amps > limit.amps && amps > NO_AMPS,
      ),
    );
    if (worst === undefined) return undefined;
    const { element, letter, amps, limit } = worst;
    return {
      where: element,
      message: say("rule.load-break-rating", {
        name: nameOf(before.document, element),
        letter: letterIn(letter),
        amps: figure(amps),
        by: say(`breaks.${limit.basis}`, { limit: figure(limit.amps) }),
      }),
      help: say("rule.load-break-rating.help"),
    };
  },
});
