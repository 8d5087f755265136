export const en = {
  "ruleName.test-before-ground": "A ground goes only on what was tested there",
  "rule.test-before-ground": "{set} grounds {where}, not tested dead there since the last switching",
  "rule.test-before-ground.help": "test {where} between the last switching and this step",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.test-before-ground": "Une terre ne se pose que sur ce qui y a été vérifié",
  "rule.test-before-ground":
    "{set} met à la terre {where}, non vérifié hors tension à cet endroit depuis la dernière manœuvre",
  "rule.test-before-ground.help": "vérifiez {where} entre la dernière manœuvre et cette étape",
};
