import { citationOf } from "../../reference";
import { say } from "../../terms";
import { isolationPoints, isSoleCrew, isTagged } from "../job/isolation";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { isRelying } from "../../steps";

/** Every open point that keeps the work dead has a tag before testing, grounding or work begins. */
export const tagEach = defineRule({
  id: "tag-each",
  severity: "danger",
  citation: citationOf("m3-ii-open-all"),
  check(step, before) {
    if (!isRelying(step)) return undefined;
    const untagged = isolationPoints(before).filter((id) => !isTagged(before, id));
    if (untagged.length === 0 || isSoleCrew(before)) return undefined;
    return untagged.map((id) => ({
      where: id,
      message: say("rule.tag-each", { name: nameOf(before.document, id), verb: say(`doing.${step.do}`) }),
      help: say("rule.tag-each.help", { name: nameOf(before.document, id) }),
    }));
  },
});
