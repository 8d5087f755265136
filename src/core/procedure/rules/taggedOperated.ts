import { openingOf, openPhasesOf } from "../../devices";
import { citationOf } from "../../reference";
import { type ElementId } from "../../terms";
import { say } from "./say";
import { phasesMoved } from "../effects/gap";
import { isTagged, wasFoundTagged } from "../job/isolation";
import { elementOf, nameOf } from "../job/names";
import { defineRule } from "./rule";
import type { JobState } from "../job/state";
import { isClosing, isOpening, isSwitching } from "../../steps";

/**
 * A tag says: do not operate. Taking the barrel out of a cutout that hangs open already is no operation of it, nor is
 * hanging it back in, open, under one's own tag while nobody is on the line; nor is opening the other poles of cutouts
 * that the crew opens and tags one by one.
 */
export const taggedOperated = defineRule({
  id: "tagged-operated",
  severity: "danger",
  citation: citationOf("m3-v-tags"),
  check(step, before, after) {
    if (!isSwitching(step)) return undefined;
    const id = step.element;
    if (!isTagged(before, id)) return undefined;
    const { opened } = phasesMoved(step, before, after);
    const isPathTouched = opened !== "" || isClosing(step);
    if (["remove-barrel", "refuse"].includes(step.do) && !isPathTouched) return undefined;
    if (step.do === "replace-barrel" && hangsOpenAgain(before, id)) return undefined;
    if (isOpening(step) && opened !== "" && hangsOnOpenPole(before, id)) return undefined;
    const name = nameOf(before.document, id);
    return {
      where: id,
      message: say("rule.tagged-operated", { name, verb: say(`doing.${step.do}`) }),
      help: say("rule.tagged-operated.help", { name }),
    };
  },
});

/** The crew's own tag on a thing whose poles open one by one, of which at least one is open: there it hangs. */
function hangsOnOpenPole(state: JobState, id: ElementId): boolean {
  const element = elementOf(state.document.system, id);
  if (element === undefined || wasFoundTagged(state, id)) return false;
  const isGang = openingOf(element)?.gang === true;
  return !isGang && openPhasesOf(element) !== "";
}

/** A barrel with its new link hangs open where it came from; while people rely on its being out, it stays out. */
const hangsOpenAgain = (state: JobState, id: ElementId): boolean =>
  state.workUnderWay.size === 0 && !wasFoundTagged(state, id);
