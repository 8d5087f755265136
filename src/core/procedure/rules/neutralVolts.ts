import { jobOf, type Step } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { type ConductorId, conductorId, type Finding } from "../../terms";
import { carriedAsNew, carriedToWork } from "../job/carried";
import { defineRule } from "./rule";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";

/**
 * A neutral that stands at a dangerous voltage is said where a step brings it about, and again when work begins. One
 * neutral stands for all that are joined to it: the work point's own, or else the one that stands highest.
 */
export const neutralVolts = defineRule({
  id: "neutral-volts",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const found =
      step.do === "work"
        ? carriedToWork("neutral-volts", step, after)
        : carriedAsNew("neutral-volts", before, after);
    return found.find((it) => it.where === ownNeutral(step, after)) ?? highest(found, after);
  },
});

function ownNeutral(step: Step, { document }: JobState): ConductorId | undefined {
  const workPoint = step.do === "work" ? jobOf(document).workPoints[step.at] : undefined;
  return workPoint === undefined ? undefined : conductorId(workPoint.at, "N");
}

/** Neutrals of one pole differ in the last digits only: the first of them is named. */
const SAME = 1e-6;

function highest(found: readonly Finding[], after: JobState): Finding | undefined {
  const volts = ({ where }: Finding) => asItStands(after).conductors[where as ConductorId]?.volts ?? 0;
  return found.reduce<Finding | undefined>(
    (most, it) => (most === undefined || volts(it) > volts(most) * (1 + SAME) ? it : most),
    undefined,
  );
}
