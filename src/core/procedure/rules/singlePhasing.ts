import { elementOfKind, elementsOfKind } from "../../document";
import { isClosing } from "../../steps";
import { COMMON_PRACTICE } from "../../reference";
import { type ConductorId, conductorId, lettersOf } from "../../terms";
import { say } from "./say";
import { phasesMoved } from "../effects/gap";
import { energizedBy } from "../job/live";
import { nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule } from "./rule";

/** A motor that ran on two phases is off before a pole is closed again whose link had blown. */
export const singlePhasing = defineRule({
  id: "single-phasing",
  severity: "warning",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (!isClosing(step) || phasesMoved(step, before, after).closed === "") return undefined;
    const found = elementOfKind(before.asFound.system, step.element, "cutout");
    if (found === undefined || found.blown === "") return undefined;
    const fed = new Set([...energizedBy(before, after), ...suppliedAgain(before, after)]);
    return elementsOfKind(after.document.system, "load")
      .filter(
        ([, it]) =>
          it.connection === "delta" &&
          it.phases.length === 3 &&
          lettersOf(it.phases).some((letter) => fed.has(conductorId(it.at, letter))),
      )
      .map(([id]) => ({
        where: id,
        message: say("rule.single-phasing", {
          name: nameOf(after.document, step.element),
          motor: nameOf(after.document, id),
        }),
        help: say("rule.single-phasing.help"),
      }));
  },
});

/** What a motor held up from its other phases before, and the supply itself feeds now. */
function suppliedAgain(before: JobState, after: JobState): ConductorId[] {
  const was = asItStands(before).conductors;
  const is = asItStands(after).conductors;
  return (Object.keys(is) as ConductorId[]).filter(
    (id) => is[id]!.state === "energized" && was[id]?.state === "backfed",
  );
}
