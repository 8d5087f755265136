export const en = {
  "ruleName.guard-first": "A wire that is down is guarded before anything else",
  "rule.guard-first": "{name} is down, and nobody keeps people away from it",
  "rule.guard-first.help": "barricade it at its poles before anything is switched, and treat it as live",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.guard-first": "Un conducteur à terre est gardé avant tout",
  "rule.guard-first": "{name} est à terre, et personne n’en éloigne les gens",
  "rule.guard-first.help":
    "le baliser à ses poteaux avant toute manœuvre, et le tenir pour être sous tension",
};
