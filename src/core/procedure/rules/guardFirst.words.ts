export const en = {
  "ruleName.guard-first": "A wire that is down is guarded before anything else",
  "rule.guard-first": "{name} is down, and nobody keeps people away from it",
  "rule.guard-first.help":
    "guard the wire at its poles before anything is switched, keep everyone 10 m (35 feet) away or as far as the local rule says, and treat it as live",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.guard-first": "Un conducteur à terre est gardé avant tout",
  "rule.guard-first": "{name} est à terre, et personne n’en éloigne les gens",
  "rule.guard-first.help":
    "le faire garder à ses poteaux avant toute manœuvre, tenir chacun à 10 m ou à la distance de la règle locale, et le tenir pour être sous tension",
};
