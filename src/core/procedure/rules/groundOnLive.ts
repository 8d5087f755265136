import { spikeIdIn, conductorNames } from "../../document";
import { citationOf } from "../../reference";
import { type ElementId } from "../../terms";
import { say } from "./say";
import { faultAmps } from "../effects/clearing";
import { liveUnder, touchedConductors } from "../effects/consequence";
import { isSpiking, spikedLive } from "../effects/spiking";
import type { StepBy } from "../../steps";
import { isLiveState } from "../job/live";
import { figure, setName } from "../job/names";
import { groundIdOf } from "../job/positions";
import { defineRule, type Problem } from "./rule";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";

/**
 * A ground put on something that is supplied makes the fault that it is meant to guard against, in the hands of the crew;
 * one that is taken off while a supply feeds it draws that fault out as an arc, and leaves the line live. So does a spike
 * that goes into the wrong cable.
 */
export const groundOnLive = defineRule({
  id: "ground-on-live",
  severity: "danger",
  citation: citationOf("n5-test"),
  check(step, before, after) {
    if (step.do === "unground") return comingOff(step.element, before);
    if (isSpiking(step)) return driven(step, before, after);
    if (step.do !== "ground") return undefined;
    const { conductors } = asItStands(before);
    const live = touchedConductors(step, before).filter((id) => isLiveState(conductors[id]?.state));
    const [first] = live;
    if (first === undefined) return undefined;
    const set = groundIdOf(before.document.system, step);
    return {
      where: set,
      message: say("rule.ground-on-live", {
        set: setName(before.document, set),
        where: conductorNames(before.document, live),
        state: say(`state.${conductors[first]!.state}`),
        volts: figure(conductors[first]!.volts),
        amps: figure(faultAmps(after, [set])),
      }),
      help: say("rule.ground-on-live.help", { where: conductorNames(before.document, live) }),
    };
  },
});

/** A spike shorts a cable as a ground does, and was meant for another one. */
function driven(step: StepBy<"test">, before: JobState, after: JobState): Problem | undefined {
  const live = spikedLive(step, before);
  const [first] = live;
  if (first === undefined) return undefined;
  const { state, volts } = asItStands(before).conductors[first]!;
  const where = conductorNames(before.document, live);
  return {
    where: step.at,
    message: say("rule.ground-on-live.spike", {
      where,
      state: say(`state.${state}`),
      volts: figure(volts),
      amps: figure(faultAmps(after, [spikeIdIn(before.document.system)])),
    }),
    help: say("rule.ground-on-live.spike.help", { where }),
  };
}

function comingOff(set: ElementId, before: JobState): Problem | undefined {
  const live = liveUnder(before, set);
  if (live.length === 0) return undefined;
  return {
    where: set,
    citation: citationOf("m3-xiii-reenergize"),
    message: say("rule.ground-on-live.off", {
      set: setName(before.document, set),
      where: conductorNames(before.document, live),
      amps: figure(faultAmps(before, [set])),
    }),
    help: say("rule.ground-on-live.off.help", { where: conductorNames(before.document, live) }),
  };
}
