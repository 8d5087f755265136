import { type CircuitElement, comesAway, openPhasesOf, letterAt } from "../../devices";
import { doneBy, jobOf } from "../../document";
import { endsOf } from "../../network";
import { COMMON_PRACTICE } from "../../reference";
import { type ConductorId, conductorId, type ElementId, lettersOf, type WorkPointId } from "../../terms";
import { say } from "./say";
import { energizedBy } from "../job/live";
import { elementOf, nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { isSwitching } from "../../steps";
import { defineRule } from "./rule";

/** What the work is to make sound is not energized before the work on it is done. */
export const notRepaired = defineRule({
  id: "not-repaired",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (!isSwitching(step) || before.document === after.document) return undefined;
    const waiting = waitingFor(before);
    if (waiting.length === 0) return undefined;
    const energized = new Set(energizedBy(before, after));
    const hot = waiting.filter((id) =>
      conductorsOf(elementOf(before.document.system, id)!).some((it) => energized.has(it)),
    );
    return hot.map((id) => ({
      where: id,
      message: say("rule.not-repaired", {
        name: nameOf(after.document, step.element),
        thing: nameOf(before.document, id),
      }),
      help: say("rule.not-repaired.help"),
    }));
  },
});

/** What is there already and waits for work that has not been done yet. */
function waitingFor({ document, played }: JobState): ElementId[] {
  const ids = (Object.keys(jobOf(document).workPoints) as WorkPointId[])
    .filter((id) => !played.some((it) => it.do === "work" && it.at === id))
    .flatMap((id) => doneBy(document, id));
  return [...new Set(ids)].filter((id) => elementOf(document.system, id)?.planned === false);
}

/** Where volts are on a thing: a clamp that is lifted hangs on its lead, and what it was lifted from is none of it. */
const conductorsOf = (element: CircuitElement): ConductorId[] =>
  endsOf(element).flatMap(([end, point]) =>
    lettersOf((element as { phases?: string }).phases ?? "")
      .filter((letter) => !(comesAway(element) && end === "from" && openPhasesOf(element).includes(letter)))
      .map((letter) => conductorId(point, letterAt(element, end, letter))),
  );
