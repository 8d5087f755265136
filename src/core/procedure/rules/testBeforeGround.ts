import { conductorNames, elementsOfKind, isSameStructure, type System } from "../../document";
import { citationOf } from "../../reference";
import { type ConductorId, conductorId, type Letter, lettersOf, partsOfConductor } from "../../terms";
import { say } from "./say";
import { isJoined } from "../job/joined";
import { setName } from "../job/names";
import { groundIdOf, phasesAt } from "../job/positions";
import { defineRule } from "./rule";

/**
 * A ground goes only on conductors tested at that point since the last switching and found without nominal voltage,
 * unless a ground on the same structure holds them already: one at the other end of a span or a cable proves nothing about
 * the conductor in hand.
 */
export const testBeforeGround = defineRule({
  id: "test-before-ground",
  severity: "danger",
  citation: citationOf("n5-test"),
  check(step, before) {
    if (step.do !== "ground") return undefined;
    const { system } = before.document;
    const untested = [...phasesAt(system, step)]
      .map((letter) => conductorId(step.at, letter as Letter))
      .filter((id) => before.readings.get(id)?.isWithoutNominalVolts !== true)
      .filter((id) => !isHeldHere(system, id));
    if (untested.length === 0) return undefined;
    const n = before.played.length + 1;
    return {
      where: groundIdOf(before.document.system, step),
      message: say("rule.test-before-ground", {
        set: setName(before.document, groundIdOf(before.document.system, step)),
        where: conductorNames(before.document, untested),
      }),
      help: say("rule.test-before-ground.help", { where: conductorNames(before.document, untested) }),
      marks: [
        ...(before.lastSwitching === 0
          ? []
          : [{ step: before.lastSwitching, why: say("mark.lastSwitching") }]),
        { step: n, why: say("mark.goesOnHere") },
      ],
    };
  },
});

/** Whether a ground set of the same structure is on a conductor. */
function isHeldHere(system: System, id: ConductorId): boolean {
  const { point } = partsOfConductor(id);
  return elementsOfKind(system, "ground").some(
    ([, it]) =>
      isSameStructure(system, it.at, point) &&
      lettersOf(it.phases).some((letter) => isJoined(system, conductorId(it.at, letter), id)),
  );
}
