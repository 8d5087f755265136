export const en = {
  "ruleName.brief-again": "Another briefing when the plan or the finding changes",
  "rule.brief-again": "the briefing no longer covers the job: {why}",
  "rule.brief-again.help": "stop, look again and brief the crew on what has changed",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.brief-again": "Une autre réunion quand l'ordre des étapes ou ce qu'on a trouvé change",
  "rule.brief-again": "la réunion ne couvre plus le travail : {why}",
  "rule.brief-again.help": "arrêtez, regardez de nouveau et réunissez l'équipe sur ce qui a changé",
};
