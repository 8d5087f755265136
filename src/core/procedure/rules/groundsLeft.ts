import { elementOfKind } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { shortsEnergized } from "../effects/consequence";
import { madeBy } from "../job/repair";
import { movedAround } from "../job/worked";
import { listOf, nameOf, setName } from "../job/names";
import { defineRule } from "./rule";

/** Nothing is energized with a ground still on it. */
export const groundsLeft = defineRule({
  id: "grounds-left",
  severity: "danger",
  citation: citationOf("m3-xiii-reenergize"),
  check(step, before, after) {
    const made = madeBy(step, before.document);
    if (made.length === 0) return undefined;
    const sets = shortsEnergized(...movedAround(step, before, after)).filter(
      (id) => elementOfKind(after.document.system, id, "ground") !== undefined,
    );
    if (sets.length === 0) return undefined;
    return {
      where: step.do === "work" ? step.at : made[0]!,
      message: say("rule.grounds-left", {
        name: listOf(made.map((id) => nameOf(after.document, id))),
        sets: listOf(sets.map((id) => setName(after.document, id))),
      }),
      help: say("rule.grounds-left.help", { sets: listOf(sets.map((id) => setName(after.document, id))) }),
    };
  },
});
