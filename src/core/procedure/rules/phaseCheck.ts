import { isSwitching, type Step } from "../../steps";
import { COMMON_PRACTICE } from "../../reference";
import { type ConductorId, partsOfConductor } from "../../terms";
import { say } from "./say";
import { degreesAcross, gapsToMeet, mismatchOf, outOfStepIn, voltsAcross } from "../effects/gap";
import { figure, letterIn, nameOf, namesOf } from "../job/names";
import { isOnePiece } from "../job/phasing";
import type { JobState } from "../job/state";
import { wereVoltsRead } from "../job/voltsRead";
import { defineRule, type Problem } from "./rule";

/**
 * Two supplies are joined only phase to phase and close in angle, and nobody takes that for granted: both sides are tested
 * for volts and phasing before a parallel path is closed, save where both are one conductor. Supplies that nothing keeps in
 * step are never joined by hand, whatever a test shows.
 */
export const phaseCheck = defineRule({
  id: "phase-check",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    // Whatever angle they stand at now, no test settles what nothing keeps in step.
    return (
      notInStep(step, before, after) ?? notTogether(step, before, after) ?? notPhased(step, before, after)
    );
  },
});

function notTogether(step: Step, before: JobState, after: JobState): Problem | undefined {
  const gap = mismatchOf(step, before, after);
  if (gap === undefined) return undefined;
  return {
    where: gap.thing,
    message: say("rule.phase-check", {
      name: nameOf(after.document, gap.thing),
      letter: letterIn(gap.letter),
      degrees: figure(Math.round(degreesAcross(gap))),
      volts: figure(voltsAcross(gap)),
    }),
    help: say("rule.phase-check.help"),
  };
}

function notInStep(step: Step, before: JobState, after: JobState): Problem | undefined {
  const joined = outOfStepIn(step, before, after);
  if (joined === undefined) return undefined;
  const { document } = before;
  return {
    where: joined.thing,
    message: say("rule.phase-check.notInStep", {
      name: nameOf(document, joined.thing),
      one: namesOf(joined.one.map((it) => nameOf(document, it))),
      other: namesOf(joined.other.map((it) => nameOf(document, it))),
      volts: figure(joined.volts),
    }),
    help: say("rule.phase-check.notInStep.help"),
  };
}

function notPhased(step: Step, before: JobState, after: JobState): Problem | undefined {
  const { system } = before.document;
  const first = gapsToMeet(step, before, after)
    .filter(({ sides: [a, b] }) => !isOnePiece(system, a, b))
    .find(({ sides }) => !sides.every((side) => wasTested(step, before, side)));
  if (first === undefined) return undefined;
  const [from, to] = first.sides.map((side) => nameOf(before.document, partsOfConductor(side).point));
  return {
    where: first.thing,
    severity: "warning",
    message: say("rule.phase-check.untested", { name: nameOf(before.document, first.thing) }),
    help: say("rule.phase-check.untested.help", { from: from!, to: to! }),
  };
}

/** Tested for volts since anything else was switched: the poles of one thing close one after the other. */
function wasTested(step: Step, { played, document: { system } }: JobState, side: ConductorId): boolean {
  const lastOther = played.findLastIndex((it) => isSwitching(it) && it.element !== step.element);
  return wereVoltsRead(system, played.slice(lastOther + 1), [side]);
}
