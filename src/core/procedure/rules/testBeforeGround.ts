import { conductorNames } from "../../document";
import { citationOf } from "../../reference";
import { conductorId, type Letter, say } from "../../terms";
import { setName } from "../job/names";
import { groundIdOf, phasesAt } from "../job/positions";
import { defineRule } from "./rule";
import { asItStands } from "../job/seen";

/**
 * A ground goes only on conductors tested at that point since the last switching and found without nominal voltage,
 * unless a ground holds them already.
 */
export const testBeforeGround = defineRule({
  id: "test-before-ground",
  severity: "danger",
  citation: citationOf("n5-test"),
  check(step, before) {
    if (step.do !== "ground") return undefined;
    const { conductors } = asItStands(before);
    const untested = [...phasesAt(before.document.system, step)]
      .map((letter) => conductorId(step.at ?? "", letter as Letter))
      .filter((id) => before.readings.get(id)?.isWithoutNominalVolts !== true)
      .filter((id) => conductors[id]?.state !== "grounded");
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
