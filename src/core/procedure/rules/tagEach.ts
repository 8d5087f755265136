import { citationOf } from "../../reference";
import { say } from "./say";
import { isolationPoints, isSoleCrew, isTagged, isThrown, machinesLeftOn } from "../job/isolation";
import { doneBy, jobOf } from "../../document";
import { type ConductorId, conductorId, type Letter } from "../../terms";
import { phaseConductors } from "../job/hands";
import { isCoupled } from "../job/joined";
import { workConductors } from "../job/live";
import { elementOf, nameOf } from "../job/names";
import { phasesAt } from "../job/positions";
import type { JobState } from "../job/state";
import { defineRule } from "./rule";
import { isRelying, type Step } from "../../steps";

/**
 * Every open point that keeps the work dead has a tag before testing, grounding or work begins; and each known source has
 * one, a customer's machine that stands still as well: a ground set is no open point. A transfer switch that alone parts a
 * machine that runs from the work is an open point too. A test of what nothing joins to the work finds out how things stand
 * there, and one that looks for volts takes nothing for dead.
 */
export const tagEach = defineRule({
  id: "tag-each",
  severity: "danger",
  citation: citationOf("m3-ii-open-all"),
  check(step, before) {
    if (!isRelying(step) || !isAboutWork(step, before)) return undefined;
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

function isAboutWork(step: Step, before: JobState): boolean {
  if (step.do !== "test") return true;
  if (step.expect === "live") return false;
  const { system } = before.document;
  const places = Object.values(jobOf(before.document).workPoints);
  if (places.some(({ at }) => at === step.at)) return true;
  const tested = [...phasesAt(system, step)].map((it) => conductorId(step.at, it as Letter));
  return isCoupled(system, tested, inHand(before));
}

/** Conductors of the work points, and every end of what the work there mends or changes. */
function inHand(state: JobState): ConductorId[] {
  const { document } = state;
  const mended = Object.keys(jobOf(document).workPoints)
    .flatMap((id) => doneBy(document, id))
    .flatMap((id) => elementOf(document.system, id) ?? [])
    .flatMap(phaseConductors);
  return [...workConductors(state), ...mended];
}
