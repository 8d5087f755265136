import { lowSidesOf } from "../../devices";
import { elementsOfKind, settingsOf, transformersOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { isClosing, isOpening, type Step } from "../../steps";
import { conductorId, lettersOf } from "../../terms";
import { say } from "./say";
import { ampsThrough, gapsOf, phasesMoved, voltsAcross } from "../effects/gap";
import { carriedAsNew } from "../job/carried";
import { legsOf } from "../job/hands";
import { isJoined } from "../job/joined";
import { energizedBy } from "../job/live";
import { figure, nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/**
 * A neutral is not cut or lifted while what hangs on its legs has supply, and nobody is connected to one that is open: the
 * legs go apart, and burn what the customers have.
 */
export const openNeutral = defineRule({
  id: "open-neutral",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (isOpening(step) && phasesMoved(step, before, after).opened.includes("N"))
      return parted(step, before, after);
    return isClosing(step) ? suppliedWithout(before, after) : undefined;
  },
});

/**
 * A neutral that a step parts with something live beside it, or that is the way back of what lives beyond: what it
 * carried, and what stands across the gap.
 */
function parted(step: Step, before: JobState, after: JobState): Problem | undefined {
  const volts = Math.max(0, ...gapsOf(after, step.element, "N").map(voltsAcross));
  const isMissed = volts >= settingsOf(before.document).hazardVolts;
  if (!isMissed && carriedAsNew("open-neutral", before, after).length === 0) return undefined;
  return {
    where: step.element!,
    message: say("rule.open-neutral.parted", {
      name: nameOf(before.document, step.element!),
      amps: figure(ampsThrough(before, step.element, "N")),
      volts: figure(volts),
    }),
    help: say("rule.open-neutral.parted.help"),
  };
}

/** Loads between leg and neutral that come to life with no neutral back to the transformer. */
function suppliedWithout(before: JobState, after: JobState): Problem[] {
  const energized = new Set(energizedBy(before, after));
  const { system } = after.document;
  const sides = transformersOf(system).flatMap(([, it]) => lowSidesOf(it));
  const hasNeutral = (at: string, legs: readonly string[]): boolean =>
    sides.some(
      (it) =>
        legsOf(it).some((id) => legs.some((leg) => isJoined(system, id, conductorId(at, leg as "1")))) &&
        isJoined(system, conductorId(it.at, "N"), conductorId(at, "N")),
    );
  const isFedBySecondary = (at: string, legs: readonly string[]): boolean =>
    sides.some((it) =>
      legsOf(it).some((id) => legs.some((leg) => isJoined(system, id, conductorId(at, leg as "1")))),
    );
  return elementsOfKind(system, "load").flatMap(([id, it]): Problem[] => {
    if (it.connection !== "wye") return [];
    const legs = lettersOf(it.phases).filter((letter) => letter === "1" || letter === "2");
    if (!legs.some((leg) => energized.has(conductorId(it.at, leg)))) return [];
    if (!isFedBySecondary(it.at, legs) || hasNeutral(it.at, legs)) return [];
    return [
      {
        where: id,
        message: say("rule.open-neutral", { name: nameOf(after.document, id) }),
        help: say("rule.open-neutral.help"),
      },
    ];
  });
}
