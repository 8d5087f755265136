export const en = {
  "ruleName.load-not-dropped": "What was opened still has another supply",
  "rule.load-not-dropped": "with {name} open, {where} is still fed by {sources}",
  "rule.load-not-dropped.by": "with {name} open, {where} is still fed by {sources}, by way of {by}",
  "rule.load-not-dropped.help":
    "find the other way in and open it too before anything here is taken for dead",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.load-not-dropped": "Ce qui a été ouvert a encore une autre alimentation",
  "rule.load-not-dropped": "{name} s’ouvre, et l’alimentation de {where} par {sources} demeure",
  "rule.load-not-dropped.by":
    "{name} s’ouvre, et l’alimentation de {where} par {sources} demeure, en passant par {by}",
  "rule.load-not-dropped.help":
    "trouvez l'autre entrée et ouvrez-la aussi avant de tenir quoi que ce soit ici pour hors tension",
};
