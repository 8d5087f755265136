export const en = {
  "ruleName.brief-first": "The crew is briefed before anything is done",
  "rule.brief-first": "work on the line begins before the tailboard",
  "rule.brief-first.help":
    "brief the crew first: hazards, work procedures, special precautions, energy-source controls, protective equipment",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.brief-first": "L'équipe est réunie avant que rien ne soit fait",
  "rule.brief-first": "le travail sur la ligne commence avant la réunion de chantier",
  "rule.brief-first.help":
    "réunissez d'abord l'équipe : dangers, méthode de travail, précautions particulières, maîtrise des sources d'énergie, équipements de protection",
};
