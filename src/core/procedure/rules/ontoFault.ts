import { isSwitching } from "../../steps";
import { citationOf } from "../../reference";
import { type ConductorId, conductorId, type ElementId, lettersOf, type Message, say } from "../../terms";
import { shortsEnergized } from "../effects/consequence";
import { energizedBy } from "../job/live";
import { elementOf, elementsOf, listOf, nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { defineRule } from "./rule";

/** Nothing is closed onto a fault that is drawn, nor onto a conductor that has parted, whatever the link does then. */
export const ontoFault = defineRule({
  id: "onto-fault",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    if (!isSwitching(step) || before.document === after.document) return undefined;
    const faults = shortsEnergized(before, after).filter(
      (id) => elementOf(after.document.system, id)?.kind !== "ground",
    );
    const onto = [...new Set([...faults, ...partedEnergized(before, after)])];
    if (onto.length === 0) return undefined;
    const things: Message = listOf(onto.map((id) => nameOf(after.document, id)));
    return {
      where: step.element,
      message: say("rule.onto-fault", { name: nameOf(after.document, step.element), things }),
      help: say("rule.onto-fault.help", { things }),
    };
  },
});

/** Spans with a broken phase conductor of which an end has come to life. */
function partedEnergized(before: JobState, after: JobState): ElementId[] {
  const energized = new Set<ConductorId>(energizedBy(before, after));
  return elementsOf(after.document.system)
    .filter(
      ([, it]) =>
        it.kind === "span" &&
        lettersOf(it.parted.replace("N", "")).some((letter) =>
          [it.from, it.to].some((point) => energized.has(conductorId(point, letter))),
        ),
    )
    .map(([id]) => id);
}
