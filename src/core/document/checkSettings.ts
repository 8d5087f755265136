import { isObject, type Json, say } from "../terms";
import { checkFields, reportFacts } from "./checkFields";
import { isMap, records } from "./checkSystem";
import { below, type Report } from "./problem";
import { reasonFields, ruleFields, settingFields } from "./settingFields";

/** Checks limits and rules: a rule goes off only with a reason, which the sheet prints. */
export function checkSettings(report: Report, settings: Json | undefined): void {
  if (settings === undefined) return;
  if (!isObject(settings)) return report.addExpected("settings", settings, say("file.expectedObject"));
  reportFacts(report, "settings", checkFields(settingFields, settings, ["rules", "reasons"]));
  const { rules = {}, reasons = {} } = settings;
  if (isMap(report, "settings.reasons", reasons))
    reportFacts(report, "settings.reasons", checkFields(reasonFields, reasons));
  if (!isMap(report, "settings.rules", rules)) return;
  for (const [id, rule] of records(report, "settings.rules", rules)) {
    const path = below("settings.rules", id);
    const facts = checkFields(ruleFields, rule);
    reportFacts(report, path, facts);
    const { off, reason = "" } = rule;
    if (facts.problems.length === 0 && off === true && (reason as string).trim() === "")
      report.addExpected(`${path}.reason`, rule["reason"], say("file.ruleReason"));
  }
}
