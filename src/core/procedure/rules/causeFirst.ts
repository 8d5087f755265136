import { elementOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { phasesMoved } from "../effects/gap";
import { energizedBy } from "../job/live";
import { nameOf } from "../job/names";
import { mayHaveTripped } from "../job/tripped";
import { defineRule } from "./rule";

/** What a fault may have opened, a link that blew or what trips, is not closed again before somebody has looked for the cause. */
export const causeFirst = defineRule({
  id: "cause-first",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (step.do !== "close") return undefined;
    const { closed } = phasesMoved(step, before, after);
    const { blown = "" } = elementOfKind(before.asFound.system, step.element, "cutout") ?? {};
    const isBlown = [...closed].some((letter) => blown.includes(letter));
    const isTripped = closed !== "" && mayHaveTripped(before, step.element);
    const wasLookedFor = before.played.some((it) => it.do === "inspect" || it.do === "work");
    if ((!isBlown && !isTripped) || wasLookedFor || energizedBy(before, after).length === 0) return undefined;
    const key = isBlown ? "rule.cause-first" : "rule.cause-first.tripped";
    return {
      where: step.element,
      message: say(key, { name: nameOf(before.document, step.element) }),
      help: say(isBlown ? "rule.cause-first.help" : "rule.cause-first.tripped.help"),
    };
  },
});
