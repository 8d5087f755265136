import { openPhasesOf } from "../../devices";
import { isClosing, type StepBy, type VerbThat } from "../../steps";
import { doneBy } from "../../document";
import type { ElementId } from "../../terms";
import { citationOf } from "../../reference";
import { say } from "./say";
import { capacitorsOf, capacitorsOn, heldCharge, isByItself, terminalsOf } from "../effects/capacitors";
import { touchedConductors } from "../effects/consequence";
import { energizedBy, isLiveState } from "../job/live";
import { figure, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";

/**
 * A capacitor is left five minutes without supply, then shorted; only then does the line that it hangs on count as dead. One that
 * the work changes is in hand itself, and its own open switch parts it from every ground set.
 */
export const capacitorDischarge = defineRule({
  id: "capacitor-discharge",
  severity: "danger",
  citation: citationOf("w1-capacitors"),
  check(step, before, after) {
    if (isClosing(step)) return closedCharged(step, before, after);
    const inHand = step.do === "work" ? doneBy(before.document, step.at) : [];
    const touched = new Set(capacitorsOn(before, touchedConductors(step, before)).map(([id]) => id));
    return capacitorsOf(before).flatMap(([id, capacitor]) => {
      if (!touched.has(id) && !inHand.includes(id)) return [];
      const held = heldCharge(before, id, capacitor);
      if (held === undefined) return [];
      const { seconds, volts } = held;
      const gaps = {
        name: nameOf(after.document, id),
        verb: say(`doing.${step.do}`),
        seconds: figure(seconds),
        volts: figure(volts),
        left: figure(Math.max(0, DISCHARGE_SECONDS - seconds)),
      };
      if (seconds < DISCHARGE_SECONDS)
        return [
          {
            where: id,
            message: say("rule.capacitor-discharge", gaps),
            help: say("rule.capacitor-discharge.help", gaps),
          },
        ];
      return step.do === "work"
        ? [
            {
              where: id,
              message: say("rule.capacitor-discharge.unshorted", gaps),
              help: say(
                openPhasesOf(capacitor) === ""
                  ? "rule.capacitor-discharge.unshorted.help"
                  : "rule.capacitor-discharge.apart.help",
                gaps,
              ),
            },
          ]
        : [];
    });
  },
});

/** A bank that is closed again while it holds a charge: its volts stand against the line's, up to twice the crest. */
function closedCharged(step: StepBy<VerbThat<"closes">>, before: JobState, after: JobState): Problem[] {
  const energized = new Set(energizedBy(before, after));
  return capacitorsOf(after).flatMap(([id, capacitor]) => {
    const held = heldCharge(before, id, capacitor);
    if (held === undefined || held.seconds >= DISCHARGE_SECONDS) return [];
    const isEnergizedByItself =
      terminalsOf(capacitor).some((it) => energized.has(it)) && isByItself(before, capacitor);
    if (!isEnergizedByItself && !isSwitchedOn(id, before, after)) return [];
    const gaps = {
      name: nameOf(after.document, step.element),
      bank: nameOf(after.document, id),
      volts: figure(held.volts),
      left: figure(DISCHARGE_SECONDS - held.seconds),
    };
    return [
      {
        where: step.element,
        message: say(
          step.element === id ? "rule.capacitor-discharge.switched" : "rule.capacitor-discharge.closed",
          gaps,
        ),
        help: say("rule.capacitor-discharge.closed.help", gaps),
      },
    ];
  });
}

/** Whether the bank's own switch puts it onto a live line: it energizes no conductor, and nothing beside it drained the bank. */
function isSwitchedOn(id: ElementId, before: JobState, after: JobState): boolean {
  const terminals = (state: JobState) =>
    capacitorsOf(state).flatMap(([it, capacitor]) => (it === id ? terminalsOf(capacitor) : []));
  const were = new Set(terminals(before));
  const { conductors } = asItStands(after);
  return terminals(after).some((it) => !were.has(it) && isLiveState(conductors[it]?.state));
}
