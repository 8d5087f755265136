import { elementOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "../../terms";
import { phasesMoved } from "../effects/gap";
import { energizedBy } from "../job/live";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";

/** A link that blew is not closed again before somebody has looked for what blew it. */
export const causeFirst = defineRule({
  id: "cause-first",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const found = elementOfKind(before.asFound.system, step.element, "cutout");
    if (step.do !== "close" || found === undefined) return undefined;
    const { closed } = phasesMoved(step, before, after);
    const isOfThose = [...closed].some((letter) => found.blown.includes(letter));
    const wasLookedFor = before.played.some((it) => it.do === "inspect" || it.do === "work");
    if (!isOfThose || wasLookedFor || energizedBy(before, after).length === 0) return undefined;
    return {
      where: step.element,
      message: say("rule.cause-first", { name: nameOf(before.document, step.element) }),
      help: say("rule.cause-first.help"),
    };
  },
});
