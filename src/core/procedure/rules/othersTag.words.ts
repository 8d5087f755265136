export const en = {
  "ruleName.others-tag": "What is another crew’s is left alone",
  "rule.others-tag": "the tag on {name} is that of {owner}",
  "rule.others-tag.set": "{name} was put on by {owner}",
  "rule.others-tag.help": "leave it as it is and speak to {owner}; what is handed over is your own",
  "rule.others-tag.permit": "the permit is released by {by}, and {owner} holds it",
  "rule.others-tag.permit.help": "{owner} releases it, or hands it over first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.others-tag": "Ce qui est à une autre équipe n’est pas touché",
  "rule.others-tag": "l’étiquette de {name} est celle de {owner}",
  "rule.others-tag.set": "{name} a été posée par {owner}",
  "rule.others-tag.help": "laisser tout en place et parler à {owner} ; ce qui est transmis est à soi",
  "rule.others-tag.permit": "l’autorisation est rendue par {by}, et {owner} la détient",
  "rule.others-tag.permit.help": "{owner} la rend, ou la transmet d’abord",
};
