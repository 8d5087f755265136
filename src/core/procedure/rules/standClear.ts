import { elementOfKind, isSameStructure } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { gapsOf, phasesMoved } from "../effects/gap";
import { isLiveState } from "../job/live";
import { nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { isTelling } from "../../steps";
import { defineRule } from "./rule";

/** A link that blows as its cutout closes throws hot gas out of the barrel: stand out of its way and look away. */
export const standClear = defineRule({
  id: "stand-clear",
  severity: "warning",
  citation: citationOf("fuse-handling"),
  check(step, before, after) {
    const element = elementOfKind(before.document.system, step.element, "cutout");
    if (step.do !== "close" || element === undefined || element.fuse === "solid") return undefined;
    const { closed } = phasesMoved(step, before, after);
    const isLive = gapsOf(before, step.element, closed).some(
      ({ from, to }) => isLiveState(from.state) || isLiveState(to.state),
    );
    if (!isLive || standsClear(before, element.to)) return undefined;
    const name = nameOf(before.document, step.element);
    return {
      where: step.element,
      message: say("rule.stand-clear", { name }),
      help: say("rule.stand-clear.help"),
    };
  },
});

/** Who stands clear stays so while one pole after the other is closed on the same structure. */
function standsClear({ document: { system }, played }: JobState, at: string): boolean {
  const last = played.findLastIndex((it) => it.do === "stand-clear");
  return (
    last !== -1 &&
    played.slice(last + 1).every((it) => {
      if (isTelling(it)) return true;
      const closed = it.do === "close" ? elementOfKind(system, it.element, "cutout") : undefined;
      return closed !== undefined && isSameStructure(system, closed.to, at);
    })
  );
}
