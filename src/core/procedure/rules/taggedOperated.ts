import { citationOf } from "../../reference";
import { type ElementId, say } from "../../terms";
import { phasesMoved } from "../gap";
import { isTagged } from "../isolation";
import { nameOf } from "../names";
import { defineRule } from "../rule";
import { isSwitching } from "../verbs";

/** A tag says: do not operate. Taking the barrel out of a cutout that hangs open already is no operation of it. */
export const taggedOperated = defineRule({
  id: "tagged-operated",
  severity: "danger",
  citation: citationOf("m3-v-tags"),
  check(step, before, after) {
    if (!isSwitching(step) || step.element === undefined) return undefined;
    if (!isTagged(before, step.element as ElementId)) return undefined;
    if (step.do === "remove-barrel" && phasesMoved(step, before, after).opened === "") return undefined;
    const name = nameOf(before.document, step.element);
    return {
      where: step.element,
      message: say("rule.tagged-operated", { name, verb: step.do }),
      help: say("rule.tagged-operated.help", { name }),
    };
  },
});
