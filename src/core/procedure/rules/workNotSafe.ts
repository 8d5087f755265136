import { endsOf } from "../../network";
import { apartOf } from "../../devices";
import { conductorNames, jobOf, workPointName } from "../../document";
import { citationOf } from "../../reference";
import { conductorId, lettersOf, say, type WorkPointId } from "../../terms";
import { elementOf, nameOf } from "../job/names";
import { doneBy } from "../job/repair";
import { asItStands, seen } from "../job/seen";
import type { JobState } from "../job/state";
import { defineRule, type Problem } from "./rule";
import { threatsWords } from "../job/threatWords";
import { isLiveWork } from "../../steps";

/** Hands touch only what is grounded, tested and beyond two mistakes; work with a hot stick goes by its own rules. */
export const workNotSafe = defineRule({
  id: "work-not-safe",
  severity: "danger",
  citation: citationOf("n2-ground-to-treat-dead"),
  check(step, before) {
    if (step.do !== "work" || isLiveWork(step)) return undefined;
    const id = step.at as WorkPointId;
    const report = seen(before).workPoints[id];
    const workPoint = jobOf(before.document).workPoints[id];
    if (report === undefined || workPoint === undefined) return undefined;
    if (report.verdict === "grounded") return looseEnds(id, before);
    const felt = report.threats.filter((it) => it.strength <= 2);
    return {
      where: id,
      message: say(felt.length === 0 ? `rule.work-not-safe.${report.verdict}` : "rule.work-not-safe", {
        name: workPointName(before.document, id),
        verdict: say(`stands.${report.verdict}`),
        threats: threatsWords(before.document, felt),
      }),
      help: say(`rule.work-not-safe.${report.verdict}.help`),
    };
  },
});

/**
 * A conductor that has parted has two ends, and both come into the hand: each is grounded for itself.
 *
 * @see NIOSH FACE 90-02, a splice grounded on one side
 */
function looseEnds(id: WorkPointId, before: JobState): Problem[] {
  const { document } = before;
  return doneBy(document, id).flatMap((span) => {
    const element = elementOf(document.system, span);
    if (element === undefined) return [];
    const loose = endsOf(element).flatMap(([, point]) =>
      lettersOf(apartOf(element).replace("N", ""))
        .map((letter) => conductorId(point, letter))
        .filter((it) => asItStands(before).conductors[it]?.state !== "grounded"),
    );
    if (loose.length === 0) return [];
    const gaps = { name: nameOf(document, span), where: conductorNames(document, loose) };
    return [
      {
        where: id,
        message: say("rule.work-not-safe.looseEnd", gaps),
        help: say("rule.work-not-safe.looseEnd.help", gaps),
      },
    ];
  });
}
