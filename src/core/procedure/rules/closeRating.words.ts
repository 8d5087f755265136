export const en = {
  "ruleName.close-rating": "What closes a circuit is made to carry its current",
  "rule.close-rating": "{name} is closed onto {amps} A and may carry {limit} A",
  "rule.close-rating.help": "drop load, or use something rated to carry it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.close-rating": "Ce qui ferme un circuit est fait pour porter son courant",
  "rule.close-rating": "{name} se ferme sur {amps} A et peut porter {limit} A",
  "rule.close-rating.help": "ôtez de la charge, ou prenez ce qui est prévu pour la porter",
};
