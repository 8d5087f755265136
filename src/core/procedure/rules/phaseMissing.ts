import { isAtCustomer, isLoad } from "../../devices";
import { elementsOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { isClosing } from "../../steps";
import { type ConductorId, conductorId, type ElementId, type Letter, lettersOf, say } from "../../terms";
import { phaseConductors, secondaryIds } from "../job/hands";
import { isJoined } from "../job/joined";
import { energizedBy } from "../job/live";
import { elementOf, elementsOf, nameOf } from "../job/names";
import { asItStands } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule } from "./rule";

/**
 * No bank is left with some of its phases energized and one missing, and no customer is put onto one meanwhile: what hangs
 * on it burns.
 */
export const phaseMissing = defineRule({
  id: "phase-missing",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const element = elementOf(after.document.system, step.element);
    if (!isClosing(step) || element === undefined || !isAtCustomer(element)) return undefined;
    const { system } = after.document;
    const energized = new Set(energizedBy(before, after));
    const served = elementsOf(system)
      .filter(([, it]) => isLoad(it))
      .flatMap(([, it]) => phaseConductors(it))
      .filter((it) => energized.has(it));
    return banksWithPhaseMissing(after)
      .filter(({ secondary }) => secondary.some((it) => served.some((own) => isJoined(system, it, own))))
      .map(({ id, missing }) => ({
        where: id,
        message: say("rule.phase-missing.closed", {
          name: nameOf(after.document, step.element!),
          bank: nameOf(after.document, id),
          phases: missing.join(" "),
        }),
        help: say("rule.phase-missing.help"),
      }));
  },
  atEnd(state) {
    if (state.played.length === 0) return undefined;
    return banksWithPhaseMissing(state).map(({ id, missing }) => ({
      where: id,
      message: say("rule.phase-missing", {
        name: nameOf(state.document, id),
        phases: missing.join(" "),
      }),
      help: say("rule.phase-missing.help"),
    }));
  },
});

interface Crippled {
  readonly id: ElementId;
  readonly missing: readonly Letter[];
  readonly secondary: readonly ConductorId[];
}

/** Banks of which some phases are energized and others are not. */
function banksWithPhaseMissing(state: JobState): Crippled[] {
  const { conductors } = asItStands(state);
  return elementsOfKind(state.document.system, "transformer").flatMap(([id, it]) => {
    if (it.phases.length < 2) return [];
    const missing = lettersOf(it.phases).filter(
      (letter) => conductors[conductorId(it.from, letter)]?.state !== "energized",
    );
    return missing.length === 0 || missing.length === it.phases.length
      ? []
      : [{ id, missing, secondary: secondaryIds(it) }];
  });
}
