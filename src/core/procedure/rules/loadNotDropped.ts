import { isTransformer, letterAt, openingOf } from "../../devices";
import { conductorNames, jobOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { lettersOf } from "../../terms";
import { say } from "./say";
import { type ConductorId, conductorId, type ElementId } from "../../terms";
import { phasesMoved } from "../effects/gap";
import { joinedTo } from "../job/joined";
import { isLiveState, workConductors } from "../job/live";
import { elementOf, nameOf, namesOf } from "../job/names";
import { isLeftOpen } from "../job/inService";
import { isFedThroughBank, pathToConductor } from "../job/paths";
import { defineRule } from "./rule";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { isOpening } from "../../steps";

/**
 * What was opened still has another supply. It is a note, since one opening of several is not the last: what may not be
 * done before the others is said by the rules on grounds, tests and work. Phases that a bank ties are its own rule's.
 */
export const loadNotDropped = defineRule({
  id: "load-not-dropped",
  severity: "note",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (!isOpening(step)) return undefined;
    const { system } = after.document;
    const { opened } = phasesMoved(step, before, after);
    if (isWorkOver(after) && isLeftOpen(after.asFound, step.element, opened)) return undefined;
    const element = elementOf(system, step.element);
    const { to } = (element ?? {}) as { to?: string };
    if (element === undefined || to === undefined) return undefined;
    const work = workConductors(after);
    const fed = lettersOf(opened)
      .map((letter) => conductorId(to, letterAt(element, "to", letter)))
      .filter(
        (id) =>
          isLiveState(asItStands(before).conductors[id]?.state) &&
          isLiveState(asItStands(after).conductors[id]?.state),
      )
      .filter((id) => !isFedThroughBank(after, id))
      .filter((id) => work.length === 0 || work.some((it) => joinedTo(system, [id]).has(it)));
    const [first] = fed;
    if (first === undefined) return undefined;
    const sources = asItStands(after).conductors[first]!.sources;
    const by = otherWay(before, after, first);
    const gaps = {
      name: nameOf(after.document, step.element),
      where: conductorNames(after.document, fed),
      sources: namesOf(sources.map((id) => nameOf(after.document, id))),
    };
    return {
      where: step.element,
      message:
        by.length === 0
          ? say("rule.load-not-dropped", gaps)
          : say("rule.load-not-dropped.by", {
              ...gaps,
              by: namesOf(by.map((id) => nameOf(after.document, id))),
            }),
      help: say("rule.load-not-dropped.help"),
    };
  },
});

/** All of it is worked and everybody is clear: what is opened as it is left only goes back, and nothing is taken for dead by it. */
const isWorkOver = ({ document, played, workUnderWay }: JobState): boolean => {
  const places = Object.keys(jobOf(document).workPoints);
  return (
    places.length > 0 &&
    workUnderWay.size === 0 &&
    places.every((id) => played.some((it) => it.do === "work" && it.at === id))
  );
};

/** What opens, or turns the volts about, on the way by which something is fed that it was not fed by before. */
function otherWay(before: JobState, after: JobState, id: ConductorId): ElementId[] {
  const was = pathToConductor(before, id);
  return pathToConductor(after, id).filter((it) => {
    const element = elementOf(after.document.system, it);
    return (
      element !== undefined &&
      !was.includes(it) &&
      (openingOf(element) !== undefined || isTransformer(element))
    );
  });
}
