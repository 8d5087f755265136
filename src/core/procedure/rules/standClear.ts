import { elementOfKind } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { gapsOf, phasesMoved } from "../effects/gap";
import { isLiveState } from "../job/live";
import { nameOf } from "../job/names";
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
    if (!isLive || before.standingClear) return undefined;
    const name = nameOf(before.document, step.element);
    return {
      where: step.element,
      message: say("rule.stand-clear", { name }),
      help: say("rule.stand-clear.help"),
    };
  },
});
