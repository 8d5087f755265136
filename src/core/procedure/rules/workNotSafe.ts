import { jobOf, workPointName } from "../../document";
import { citationOf } from "../../reference";
import { say, type WorkPointId } from "../../terms";
import { defineRule } from "./rule";
import { seen } from "../job/seen";
import { threatsWords } from "../job/threatWords";
import { isHotStickWork } from "../../steps";

/** Hands touch only what is grounded, tested and beyond two mistakes; work with a hot stick goes by its own rules. */
export const workNotSafe = defineRule({
  id: "work-not-safe",
  severity: "danger",
  citation: citationOf("n2-ground-to-treat-dead"),
  check(step, before) {
    if (step.do !== "work" || isHotStickWork(step)) return undefined;
    const id = step.at as WorkPointId;
    const report = seen(before).workPoints[id];
    const workPoint = jobOf(before.document).workPoints[id];
    if (report === undefined || workPoint === undefined || report.verdict === "grounded") return undefined;
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
