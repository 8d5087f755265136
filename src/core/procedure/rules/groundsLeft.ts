import { elementOfKind } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { shortsEnergized } from "../effects/consequence";
import { listOf, nameOf, setName } from "../job/names";
import { defineRule } from "./rule";
import { isSwitching } from "../../steps";

/** Nothing is energized with a ground still on it. */
export const groundsLeft = defineRule({
  id: "grounds-left",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    if (!isSwitching(step) || before.document === after.document) return undefined;
    const sets = shortsEnergized(before, after).filter(
      (id) => elementOfKind(after.document.system, id, "ground") !== undefined,
    );
    if (sets.length === 0) return undefined;
    return {
      where: step.element,
      message: say("rule.grounds-left", {
        name: nameOf(after.document, step.element),
        sets: listOf(sets.map((id) => setName(after.document, id))),
      }),
      help: say("rule.grounds-left.help", { sets: listOf(sets.map((id) => setName(after.document, id))) }),
    };
  },
});
