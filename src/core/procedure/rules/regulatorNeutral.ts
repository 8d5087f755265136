import { elementsOfKind } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { type ConductorId, conductorId, type Letter, lettersOf } from "../../terms";
import { say } from "./say";
import { ampsThrough, phasesMoved } from "../effects/gap";
import { joinedWithout } from "../job/joined";
import { figure, nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { defineRule } from "./rule";
import { isClosing } from "../../steps";

/** A regulator is bypassed at neutral, and blocked there: off neutral its series winding is a short through the bypass. */
export const regulatorNeutral = defineRule({
  id: "regulator-neutral",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (!isClosing(step) || phasesMoved(step, before, after).closed === "") return undefined;
    return elementsOfKind(after.document.system, "regulator").flatMap(([id, it]) => {
      if (it.bypassed) return [];
      const bypassed = lettersOf(it.phases).filter(
        (letter) =>
          !it.open.includes(letter) &&
          isBypassed(after, id, it, letter) &&
          !isBypassed(before, id, it, letter),
      );
      const [letter] = bypassed;
      if (letter === undefined) return [];
      const off = bypassed.filter((one) => (it.taps[one as "A"] ?? 0) !== 0).join("");
      if (off === "" && it.blocked) return [];
      const gaps = {
        name: nameOf(after.document, id),
        by: nameOf(after.document, step.element),
        phases: off,
        amps: figure(ampsThrough(after, id, off)),
      };
      return [
        {
          where: id,
          ...(off === "" ? { severity: "warning" as const } : {}),
          message: say(off === "" ? "rule.regulator-neutral.unblocked" : "rule.regulator-neutral", gaps),
          help: say(
            off === "" ? "rule.regulator-neutral.unblocked.help" : "rule.regulator-neutral.help",
            gaps,
          ),
        },
      ];
    });
  },
});

/** Whether something beside a regulator joins both its ends, on one phase. */
function isBypassed(
  { document }: JobState,
  id: Parameters<typeof joinedWithout>[2],
  { from, to }: { readonly from: string; readonly to: string },
  letter: Letter,
): boolean {
  const ends: readonly ConductorId[] = [conductorId(from, letter), conductorId(to, letter)];
  return joinedWithout(document.system, [ends[0]!], id).has(ends[1]!);
}
