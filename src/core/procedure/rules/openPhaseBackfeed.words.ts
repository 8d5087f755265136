export const en = {
  "ruleName.open-phase-backfeed": "An opened phase of a bank counts as live until the others are open",
  "rule.open-phase-backfeed":
    "{where} is taken for dead, and {name} holds it at {volts} V from its other phases",
  "rule.open-phase-backfeed.help": "open every phase that feeds {name}, then test",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.open-phase-backfeed":
    "Une phase ouverte d'un banc compte sous tension tant que les autres sont fermées",
  "rule.open-phase-backfeed":
    "on tient {where} pour hors tension, et {name} y maintient {volts} V par ses autres phases",
  "rule.open-phase-backfeed.help": "ouvrez chaque phase qui alimente {name}, puis vérifiez",
};
