export const en = {
  "ruleName.load-break-rating": "The current is within what the tool or switch breaks",
  "rule.load-break-rating": "{name} breaks {amps} A on {letter}, more than {by}",
  "rule.load-break-rating.help":
    "drop load until the current is within the rating, or open something that is rated for it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.load-break-rating": "Le courant reste dans ce que coupe l'outil ou l'appareil",
  "rule.load-break-rating": "{name} coupe {amps} A sur {letter}, plus que {by}",
  "rule.load-break-rating.help":
    "ôtez de la charge jusqu'à tenir dans le pouvoir de coupure, ou ouvrez ce qui est prévu pour",
};
