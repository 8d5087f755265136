import { letterAt } from "../../devices";
import { conductorNames } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { lettersOf } from "../../terms";
import { say } from "./say";
import { conductorId } from "../../terms";
import { phasesMoved } from "../effects/gap";
import { joinedTo } from "../job/joined";
import { isLiveState, workConductors } from "../job/live";
import { elementOf, nameOf, namesOf } from "../job/names";
import { isFedThroughBank } from "../job/paths";
import { defineRule } from "./rule";
import { asItStands } from "../job/seen";
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
    return {
      where: step.element,
      message: say("rule.load-not-dropped", {
        name: nameOf(after.document, step.element),
        where: conductorNames(after.document, fed),
        sources: namesOf(sources.map((id) => nameOf(after.document, id))),
      }),
      help: say("rule.load-not-dropped.help"),
    };
  },
});
