/** A drawing's own rules and limits: what each rule of the rehearsal holds to, and the screen that turns it off for a reason. */
export const company = {
  "company.amount": "{value} {unit}",
  "company.unknownRule": "A rule that this version does not know",
  "rules.on": "On",
  "rules.off": "Off",

  "limit.singleCrew":
    "One crew, with every opening visible, on the structure of the work and under its own control, may leave out the request, the tags and the blocking (29 CFR 1910.269(m)(2)(iii))",
  "limit.hazardVolts": "Hot from",
  "limit.exposureLimitVolts": "Exposure limit",
  "limit.openWithoutLoadBreakAmps": "Bare cutout may break",
  "limit.tapClampMaxAmps": "Tap clamp may carry",
  "limit.assumeGenerators": "Assume that any customer may have a generator",
  "limit.assumedGeneratorKva": "Assumed generator",
  "limit.bodyOhms": "Resistance of a body",
  "limit.clearingSeconds": "Clearing time",
  "limit.inducedLimitVolts": "Induced exposure limit",
  "limit.clampBreakAmps": "Tap clamp may break",
  "limit.seenDays": "What was seen counts as seen for (0: always)",
} as const;
