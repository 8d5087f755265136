/** A company's rules and limits, as they are changed and shown. */
export const company = {
  "company.title": "Company rules and limits",
  "company.open": "Company rules and limits of this drawing",
  "company.about":
    "They hold for this drawing and are saved in it. Each change needs a reason, and stands on the sheet with it.",
  "company.none": "Every rule is on, every limit is the usual one.",
  "company.rulesOff.one": "1 rule is off here.",
  "company.rulesOff": "{count} rules are off here.",
  "company.limits.one": "1 limit is not the usual one.",
  "company.limits": "{count} limits are not the usual ones.",
  "company.why": "Which, and why",
  "company.ruleFacts": "{severity} · {rule} · {citation}",
  "company.limitIs": "{what}: {value} ({why})",
  "company.back": "Back to the default",
  "company.onAgain": "Turn on again",
  "company.what": "{what}: {why}",
  "company.noReason": "no reason was given",
  "company.change": "Change",
  "company.changeName": "Change: {name}",
  "company.value": "{name} [{unit}]",
  "company.reasonFor": "Reason, as it will stand on the sheet",
  "company.needReason": "Say why first: a limit changes only with a reason.",
  "company.needNumber": "That is no number.",
  "company.ruleOffHelp":
    "Whatever this rule finds is then told nowhere: not in Plan, not in Rehearse, not on the sheet. What happens to a person stays the same.",
} as const;
