import { elementsOfKind, settingsOf } from "../../document";
import { COMMON_PRACTICE } from "../../reference";
import { conductorId, lettersOf, say } from "../../terms";
import { ampsThrough, phasesMoved } from "../effects/gap";
import { energizedBy } from "../job/live";
import { figure, nameOf } from "../job/names";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/** A clamp goes on with what is beyond it open; the cutout then picks up the load, or a bank with its inrush. */
export const pickUpOrder = defineRule({
  id: "pick-up-order",
  severity: "danger",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    if (step.do !== "attach") return undefined;
    const amps = ampsThrough(after, step.element, phasesMoved(step, before, after).closed);
    const { clampBreakAmps } = settingsOf(after.document);
    if (amps <= clampBreakAmps) return bankByClamp(step.element!, before, after);
    return {
      where: step.element!,
      message: say("rule.pick-up-order", {
        name: nameOf(after.document, step.element!),
        amps: figure(amps),
        limit: clampBreakAmps,
      }),
      help: say("rule.pick-up-order.help"),
    };
  },
});

/** A transformer that a clamp energizes: its magnetizing inrush is made by the jaws, whatever it draws afterwards. */
function bankByClamp(clamp: string, before: JobState, after: JobState): Problem | undefined {
  const energized = new Set(energizedBy(before, after));
  const bank = elementsOfKind(after.document.system, "transformer").find(([, it]) =>
    lettersOf(it.phases).some((letter) => energized.has(conductorId(it.from, letter))),
  );
  if (bank === undefined) return undefined;
  return {
    where: clamp,
    message: say("rule.pick-up-order.bank", {
      name: nameOf(after.document, clamp),
      bank: nameOf(after.document, bank[0]),
    }),
    help: say("rule.pick-up-order.help"),
  };
}
