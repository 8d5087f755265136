export const en = {
  "ruleName.onto-fault": "Nothing is closed onto a fault or a broken conductor",
  "rule.onto-fault": "{name} closes onto {things}, which is not mended",
  "rule.onto-fault.help": "mend {things} first, or cut it off at both ends and energize the rest",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.onto-fault": "On ne ferme pas sur un défaut ni sur un conducteur rompu",
  "rule.onto-fault": "{name} ferme sur {things}, qui n’est pas réparé",
  "rule.onto-fault.help":
    "réparer d’abord {things}, ou l’isoler aux deux bouts et remettre le reste sous tension",
};
