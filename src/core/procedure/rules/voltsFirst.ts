import { isAtCustomer, isTransformer } from "../../devices";
import { jobOf } from "../../document";
import { endsOf } from "../../network";
import { COMMON_PRACTICE } from "../../reference";
import { isClosing } from "../../steps";
import { type ConductorId, conductorId, type ElementId, lettersOf, partsOfConductor, say } from "../../terms";
import { secondaryIds } from "../job/hands";
import { isJoined } from "../job/joined";
import { energizedBy } from "../job/live";
import { elementOf, nameOf } from "../job/names";
import { phasesAt } from "../job/positions";
import { doneBy } from "../job/repair";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";

/** A transformer that was changed has its secondary volts read before a meter or a main puts a customer onto it: a wrong tap or leg burns what they have. */
export const voltsFirst = defineRule({
  id: "volts-first",
  severity: "note",
  citation: COMMON_PRACTICE,
  check(step, before, after) {
    const element = elementOf(after.document.system, step.element);
    if (!isClosing(step) || element === undefined || !isAtCustomer(element)) return undefined;
    const energized = new Set(energizedBy(before, after));
    const comesToLife = endsOf(element).some(([, point]) =>
      lettersOf((element as { phases?: string }).phases ?? "").some((letter) =>
        energized.has(conductorId(point, letter)),
      ),
    );
    if (!comesToLife) return undefined;
    return changedBanks(before).flatMap((id): Problem[] => {
      const legs = legsOf(after, id);
      const isFed = legs.some((leg) => [...energized].some((it) => isJoined(after.document.system, leg, it)));
      if (!isFed || wereRead(before, legs)) return [];
      const gaps = { name: nameOf(after.document, step.element!), bank: nameOf(after.document, id) };
      return [
        {
          where: step.element!,
          message: say("rule.volts-first", gaps),
          help: say("rule.volts-first.help", {
            at: nameOf(after.document, partsOfConductor(legs[0]!).point),
          }),
        },
      ];
    });
  },
});

/** Transformers that the work so far put in or mended. */
const changedBanks = ({ document, played }: JobState): ElementId[] =>
  Object.keys(jobOf(document).workPoints)
    .filter((id) => played.some((it) => it.do === "work" && it.at === id))
    .flatMap((id) => doneBy(document, id))
    .filter((id) => isTransformer(elementOf(document.system, id)));

function legsOf({ document: { system } }: JobState, id: ElementId): ConductorId[] {
  const bank = elementOf(system, id);
  return bank !== undefined && isTransformer(bank) ? secondaryIds(bank) : [];
}

/** Whether volts were looked for and read on a secondary since the work. */
function wereRead({ played, document: { system } }: JobState, legs: readonly ConductorId[]): boolean {
  return played
    .slice(played.findLastIndex((it) => it.do === "work"))
    .some(
      (it) =>
        it.do === "test" &&
        it.expect === "live" &&
        [...phasesAt(system, it)].some((letter) =>
          legs.some((leg) => isJoined(system, leg, conductorId(it.at, letter as never))),
        ),
    );
}
