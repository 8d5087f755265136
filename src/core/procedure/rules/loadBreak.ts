import { NO_AMPS } from "../tolerances";
import { settingsOf } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { breakingsOf, worstOf } from "../effects/breaking";
import { figure, letterIn, nameOf } from "../job/names";
import { defineRule } from "./rule";

/**
 * Whatever opens a circuit under load is made to break that current. A bare cutout, a meter, a clamp and a lead are not;
 * what a company lets a bare cutout break is its own procedure, and said so.
 */
export const loadBreak = defineRule({
  id: "load-break",
  severity: "danger",
  citation: citationOf("open-under-load"),
  check(step, before, after) {
    const worst = worstOf(
      breakingsOf(step, before, after).filter(({ limit }) =>
        ["bare", "unrated", "clamp", "lead"].includes(limit.basis),
      ),
    );
    if (worst === undefined || worst.amps <= NO_AMPS) return undefined;
    const { element, letter, amps, limit } = worst;
    const gaps = {
      name: nameOf(before.document, element),
      letter: letterIn(letter),
      amps: figure(amps),
      limit: figure(limit.amps),
    };
    if (amps > limit.amps)
      return {
        where: element,
        message: say(`rule.load-break.${limit.basis as "bare" | "unrated" | "clamp" | "lead"}`, gaps),
        help: say("rule.load-break.help"),
      };
    if (limit.basis !== "bare") return undefined;
    return {
      where: element,
      severity: "note",
      message: say("rule.load-break.procedure", {
        ...gaps,
        limit: settingsOf(before.document).openWithoutLoadBreakAmps,
      }),
      help: say("rule.load-break.procedure.help"),
    };
  },
});
