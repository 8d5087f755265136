import { elementsOfKind } from "../../document";
import { citationOf } from "../../reference";
import { say } from "./say";
import { listOf, nameOf, setName, workPlaces } from "../job/names";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";

/**
 * Release goes in order: people clear, grounds off, released, tags off; then it is closed. While
 * people are on the line no tag and no block comes off, with a permit or without one.
 */
export const releaseOrder = defineRule({
  id: "release-order",
  severity: "danger",
  citation: citationOf("m3-x-release"),
  check(step, before) {
    if (step.do === "release-permit") return releaseProblems(before);
    if (step.do !== "untag" && step.do !== "unblock") return undefined;
    if (before.workUnderWay.size > 0) return underWay(step.do, step.element, before);
    if (step.do === "unblock" || before.permit !== "held") return undefined;
    return {
      where: step.element,
      severity: "warning",
      citation: citationOf("m3-xii-tags-after-release"),
      message: say("rule.release-order.tag", { name: nameOf(before.document, step.element) }),
      help: say("rule.release-order.tag.help"),
    };
  },
});

const underWay = (verb: "untag" | "unblock", element: string, before: JobState): Problem => ({
  where: element,
  message: say(`rule.release-order.${verb}`, {
    name: nameOf(before.document, element),
    where: workPlaces(before.document, before.workUnderWay),
  }),
  help: say("rule.release-order.people.help"),
  marks: [{ step: before.lastWork, why: say("mark.workBegan") }],
});

function releaseProblems(before: JobState): Problem[] {
  const sets = elementsOfKind(before.document.system, "ground")
    .filter(([id]) => !(id in before.asFound.system.elements))
    .map(([id]) => id);
  const problems: Problem[] = [];
  if (before.workUnderWay.size > 0)
    problems.push({
      where: "job",
      message: say("rule.release-order.people", { where: workPlaces(before.document, before.workUnderWay) }),
      help: say("rule.release-order.people.help"),
    });
  if (sets.length > 0)
    problems.push({
      where: sets[0]!,
      message: say("rule.release-order.grounds", {
        sets: listOf(sets.map((id) => setName(before.document, id))),
      }),
      help: say("rule.release-order.grounds.help", {
        sets: listOf(sets.map((id) => setName(before.document, id))),
      }),
    });
  if (before.permit !== "held")
    problems.push({
      where: "job",
      severity: "note",
      message: say("rule.release-order.none"),
    });
  return problems;
}
