import type { Step } from "../../steps";
import { citationOf } from "../../reference";
import { type ElementId, type Message } from "../../terms";
import { say } from "./say";
import { gapsMade } from "../effects/gap";
import { brokenThings } from "../job/inService";
import { islandOf } from "../job/joined";
import { energizedBy, isLiveState } from "../job/live";
import { madeBy } from "../job/repair";
import { listOf, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { movedAround } from "../job/worked";
import { defineRule } from "./rule";

/** Nothing is closed onto a fault that is drawn, nor onto a conductor that has parted, whatever the link does then. */
export const ontoFault = defineRule({
  id: "onto-fault",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    const made = madeBy(step, before.document);
    if (made.length === 0) return undefined;
    const onto = closedOnto(step, ...movedAround(step, before, after));
    if (onto.length === 0) return undefined;
    const things: Message = listOf(onto.map((id) => nameOf(after.document, id)));
    return {
      where: step.do === "work" ? step.at : made[0]!,
      message: say("rule.onto-fault", { name: listOf(made.map((id) => nameOf(after.document, id))), things }),
      help: say("rule.onto-fault.help", { things }),
    };
  },
});

/**
 * What is broken and comes to life by a step, or is joined by it to something live, though a bank's other phases may have
 * held it at some volts before.
 */
function closedOnto(step: Step, before: JobState, after: JobState): ElementId[] {
  const energized = new Set(energizedBy(before, after));
  const { system } = before.document;
  const joinedToLive = new Set(
    gapsMade(step, before, after).flatMap(({ sides: [a, b] }) => {
      const [one, other] = [islandOf(system, a), islandOf(system, b)];
      if (one === other) return [];
      const isLive = (id: typeof a) => isLiveState(asItStands(before).conductors[id]?.state);
      return [...(isLive(b) ? [one] : []), ...(isLive(a) ? [other] : [])];
    }),
  );
  return brokenThings(after.document.system)
    .filter(([, ids]) => ids.some((id) => energized.has(id) || joinedToLive.has(islandOf(system, id))))
    .map(([id]) => id);
}
