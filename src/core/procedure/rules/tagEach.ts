import { citationOf } from "../../reference";
import { say } from "./say";
import { isolationPoints, isSoleCrew, isTagged, isThrown, machinesLeftOn } from "../job/isolation";
import { complete, doneBy, isSameStructure, jobOf } from "../../document";
import { endsOf } from "../../network";
import { type ConductorId, conductorId, type ElementId, type Letter } from "../../terms";
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
    if (!isRelying(step)) return undefined;
    const restsOn = whatRests(step, before);
    if (restsOn === "nothing") return undefined;
    const verb = say(`doing.${step.do}`);
    const machines = restsOn === "all" ? machinesLeftOn(before) : [];
    const joined = machines.map((id) => ({
      where: id,
      message: say("rule.tag-each.joined", { name: nameOf(before.document, id), verb }),
      help: say("rule.tag-each.joined.help", { name: nameOf(before.document, id) }),
    }));
    if (isSoleCrew(before)) return joined;
    const untagged = isolationPoints(before).filter(
      (id) => !isTagged(before, id) && (restsOn === "all" || standsAt(before, id, step.at as string)),
    );
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

/**
 * Which open points a step takes to be as they were left: all that keep the work dead, or, for a test beyond an open switch on
 * the structure of the work, those on that structure alone.
 */
function whatRests(step: Step, before: JobState): "all" | "those here" | "nothing" {
  if (step.do !== "test") return "all";
  if (step.expect === "live") return "nothing";
  const { system } = before.document;
  const places = Object.values(jobOf(before.document).workPoints);
  const tested = [...phasesAt(system, step)].map((it) => conductorId(step.at, it as Letter));
  if (places.some(({ at }) => at === step.at) || isCoupled(system, tested, inHand(before))) return "all";
  return places.some(({ at }) => isSameStructure(system, at, step.at)) ? "those here" : "nothing";
}

/** Whether a thing has an end on the structure of a point. */
const standsAt = ({ document: { system } }: JobState, id: ElementId, at: string): boolean =>
  endsOf(complete(system.elements[id]!)).some(([, end]) => isSameStructure(system, end, at));

/** Conductors of the work points, and every end of what the work there mends or changes. */
function inHand(state: JobState): ConductorId[] {
  const { document } = state;
  const mended = Object.keys(jobOf(document).workPoints)
    .flatMap((id) => doneBy(document, id))
    .flatMap((id) => elementOf(document.system, id) ?? [])
    .flatMap(phaseConductors);
  return [...workConductors(state), ...mended];
}
