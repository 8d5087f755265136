import { isGroundSet } from "../../devices";
import { jobOf, type Step } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { type ElementId, type Message } from "../../terms";
import { say } from "./say";
import { phasesElsewhere } from "../job/inService";
import { isTagged, wasFoundTagged } from "../job/isolation";
import { elementOf, elementsOf, nameOf } from "../job/names";
import { defineRule, type Problem } from "./rule";
import type { JobState } from "../job/state";

/**
 * At the end nothing of the job stays on the line: grounds, covers, tags, the permit, or a position other than the normal
 * one, or the one that the job says.
 * A `note` step that names the thing and says why excuses it. While people are on the line the job is not at its end: then
 * it is a note.
 */
export const leftBehind = defineRule({
  id: "left-behind",
  severity: "warning",
  citation: COMMON_PRACTICE,
  atEnd(state) {
    const { document, asFound, played } = state;
    const left: [where: string, what: Message][] = [];
    const name = (id: string) => ({ name: nameOf(document, id) });
    for (const [id, it] of elementsOf(document.system)) {
      if (isGroundSet(it) && (!(id in asFound.system.elements) || wasTakenOver(state, id)))
        left.push([id, say("left.ground", { name: id })]);
      else if (isTagged(state, id) && !wasFoundTagged(state, id)) left.push([id, say("left.tag", name(id))]);
      else if (isElsewhere(state, id)) left.push([id, say("left.position", name(id))]);
    }
    for (const id of Object.keys(asFound.system.elements))
      if (
        !(id in document.system.elements) &&
        isGroundSet(elementOf(asFound.system, id)) &&
        !wasTakenOver(state, id)
      )
        left.push([id, say("left.groundTaken", { name: nameOf(asFound, id) })]);
    for (const id of state.covered) left.push([id, say("left.cover", name(id))]);
    if ((state.permit === "held" && !wentToAnother(state)) || state.permit === "requested")
      left.push(["permit", say("left.permit")]);
    const isUnderWay = state.workUnderWay.size > 0;
    return left
      .filter(([id]) => !isExcused(played, id))
      .map(([where, what]): Problem => ({
        where,
        ...(isUnderWay ? { severity: "note" as const } : {}),
        message: say(isUnderWay ? "rule.left-behind.underWay" : "rule.left-behind", { what }),
        help: say("rule.left-behind.help"),
      }));
  },
});

/** Whether a set that was found on was handed to the crew, which then takes it off as its own. */
const wasTakenOver = ({ asFound, played }: JobState, id: string): boolean =>
  played.findLast((it) => it.do === "hand-over" && it.element === id)?.to === jobOf(asFound).crew;

/** Keys beside its position that say how a thing stands; a link renewed and a lead remade are repairs, not left behind. */
const ADDED_KEYS = ["blown", "removed", "cut", "parted"] as const;

function isElsewhere({ document, asFound, played }: JobState, id: ElementId): boolean {
  const is = elementOf(document.system, id) as unknown as Record<string, unknown>;
  const was = elementOf(asFound.system, id) as unknown as Record<string, unknown> | undefined;
  if (was === undefined) return false;
  return (
    phasesElsewhere(asFound, document.system, id) !== "" ||
    is["position"] !== was["position"] ||
    // A machine is its owner's to start, found running or not.
    (is["on"] === true &&
      (was["on"] !== true || played.some((it) => it.do === "start" && it.element === id))) ||
    (is["blocked"] === true && was["blocked"] !== true) ||
    (jobOf(asFound).leave[id] === "open"
      ? is["cut"] === ""
      : ADDED_KEYS.some((key) => addsTo(was[key], is[key])))
  );
}

const addsTo = (was: unknown, is: unknown): boolean =>
  typeof was === "string" && typeof is === "string" && [...is].some((letter) => !was.includes(letter));

const isExcused = (played: readonly Step[], id: string): boolean =>
  played.some(
    (it) => it.do === "note" && (it.text ?? "") !== "" && (it.element === id || it.at === id || it.to === id),
  );

/** A permit that was handed over to another crew is that crew's. */
function wentToAnother({ document, played }: JobState): boolean {
  const last = played.findLast((it) => it.do === "hand-over" && it.permit === true);
  return last !== undefined && last.to !== jobOf(document).crew;
}
