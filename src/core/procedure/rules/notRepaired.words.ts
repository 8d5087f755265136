export const en = {
  "ruleName.not-repaired": "What is to be repaired is not energized before that",
  "rule.not-repaired": "{name} energizes {thing} before the work on it is done",
  "rule.not-repaired.help": "do the work first, or cut that part off at both ends",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.not-repaired": "Ce qui est à réparer n’est pas mis sous tension avant",
  "rule.not-repaired": "{name} met {thing} sous tension avant que les travaux y soient faits",
  "rule.not-repaired.help": "faire d’abord les travaux, ou isoler cette partie aux deux bouts",
};
