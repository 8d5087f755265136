import { citationOf, COMMON_PRACTICE } from "../../reference";
import { say } from "./say";
import { isSoleCrew } from "../job/isolation";
import { nameOf } from "../job/names";
import { circuitsOverWork } from "../job/overWork";
import { defineRule, type Problem } from "./rule";
import { seen } from "../job/seen";
import type { JobState } from "../job/state";
import { isRelying, type Step } from "../../steps";
import { closesByItself } from "../../hazard";

/**
 * What can close by itself or from afar is blocked before anything rests on its being open; a tag does not hold it. A circuit
 * that crosses what is in hand, or hangs on the same poles, is not the crew's to block: the operator is asked to hold its
 * reclosing before work begins. No drawing says whether it recloses, so that is a note.
 */
export const automaticDevice = defineRule({
  id: "automatic-device",
  severity: "danger",
  citation: citationOf("m3-iii-auto"),
  check(step, before, after) {
    return [...closingByItself(step, after), ...notHeld(step, before)];
  },
});

function closingByItself(step: Step, after: JobState): Problem[] {
  if (!isRelying(step) || isSoleCrew(after)) return [];
  const closing = new Set<string>();
  for (const { threats } of Object.values(seen(after).workPoints))
    for (const { upsets } of threats)
      for (const it of upsets) if (closesByItself(it)) closing.add(it.element);
  return [...closing].sort().map((id) => ({
    where: id,
    message: say("rule.automatic-device", { name: nameOf(after.document, id) }),
    help: say("rule.automatic-device.help", { name: nameOf(after.document, id) }),
  }));
}

function notHeld(step: Step, { document, played }: JobState): Problem[] {
  if (step.do !== "work") return [];
  return circuitsOverWork(document, step.at)
    .filter(
      (id) =>
        // Who asks of nothing by name asks of the job, and of what hangs over it.
        !played.some((it) => it.do === "ask" && it.at === undefined && (it.element ?? id) === id),
    )
    .map((id) => ({
      where: id,
      severity: "note",
      citation: COMMON_PRACTICE,
      message: say("rule.automatic-device.over", { name: nameOf(document, id) }),
      help: say("rule.automatic-device.over.help", { name: nameOf(document, id) }),
    }));
}
