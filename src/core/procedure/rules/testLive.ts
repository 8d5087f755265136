import { conductorNames } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { conductorId, type Letter } from "../../terms";
import { say } from "./say";
import { figure } from "../job/names";
import { phasesAt } from "../job/positions";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";
import { isLooking, type StepBy } from "../../steps";

/**
 * A test that shows voltage ends the plan: the crew stops and looks again before it does anything else. One that was to
 * show volts, after energizing or before two things are joined, stops it where it shows none.
 */
export const testLive = defineRule({
  id: "test-live",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (step.do === "test" && step.expect === "live") return missingVolts(step, after);
    const [first] = before.shownLive;
    if (first === undefined || isLooking(step)) return undefined;
    return {
      where: first,
      message: say("rule.test-live", {
        where: conductorNames(before.document, before.shownLive),
        volts: figure(before.readings.get(first)?.volts ?? 0),
        verb: say(`doing.${step.do}`),
      }),
      help: say("rule.test-live.help"),
    };
  },
});

function missingVolts(step: StepBy<"test">, { document, readings }: JobState): Problem[] {
  const dead = [...phasesAt(document.system, step)]
    .filter((it) => it !== "N")
    .map((letter) => conductorId(step.at, letter as Letter))
    .filter((id) => readings.get(id)?.isWithoutNominalVolts === true);
  const [first] = dead;
  if (first === undefined) return [];
  return [
    {
      where: first,
      severity: "warning",
      message: say("rule.test-live.none", { where: conductorNames(document, dead) }),
      help: say("rule.test-live.none.help"),
    },
  ];
}
