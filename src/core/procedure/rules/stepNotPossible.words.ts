export const en = {
  "ruleName.step-not-possible": "Each step can be done as things stand",
  "rule.step-not-possible.help": "look at what stands on the pole, and mend the plan",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.step-not-possible": "Chaque étape peut se faire dans l'état des choses",
  "rule.step-not-possible.help": "regardez ce qu'il y a sur le poteau, et corrigez l'ordre des étapes",
};
