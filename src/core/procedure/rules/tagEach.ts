import { citationOf } from "../../reference";
import { say } from "./say";
import { isolationPoints, isSoleCrew, isTagged, isThrown, machinesLeftOn } from "../job/isolation";
import { nameOf } from "../job/names";
import { defineRule } from "./rule";
import { isRelying } from "../../steps";

/**
 * Every open point that keeps the work dead has a tag before testing, grounding or work begins; and each known source has
 * one, a customer's machine that stands still as well: a ground set is no open point. A transfer switch that alone parts a
 * machine that runs from the work is an open point too.
 */
export const tagEach = defineRule({
  id: "tag-each",
  severity: "danger",
  citation: citationOf("m3-ii-open-all"),
  check(step, before) {
    if (!isRelying(step)) return undefined;
    const verb = say(`doing.${step.do}`);
    const joined = machinesLeftOn(before).map((id) => ({
      where: id,
      message: say("rule.tag-each.joined", { name: nameOf(before.document, id), verb }),
      help: say("rule.tag-each.joined.help", { name: nameOf(before.document, id) }),
    }));
    if (isSoleCrew(before)) return joined;
    const untagged = isolationPoints(before).filter((id) => !isTagged(before, id));
    return [
      ...joined,
      ...untagged.map((id) => ({
        where: id,
        message: say(isThrown(before, id) ? "rule.tag-each.thrown" : "rule.tag-each", {
          name: nameOf(before.document, id),
          verb,
        }),
        help: say(isThrown(before, id) ? "rule.tag-each.thrown.help" : "rule.tag-each.help", {
          name: nameOf(before.document, id),
        }),
      })),
    ];
  },
});
