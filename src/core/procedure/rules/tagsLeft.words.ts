export const en = {
  "ruleName.tags-left": "Every tag of the job is off what is energized again",
  "rule.tags-left": "{name} energizes the section while the tag on {tagged} is still there",
  "rule.tags-left.help": "take the tag off {tagged} first, once its people have released it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.tags-left": "Chaque étiquette du travail est retirée de ce qui revient sous tension",
  "rule.tags-left": "{name} met la section sous tension alors que l'étiquette de {tagged} y est encore",
  "rule.tags-left.help": "ôtez d'abord l'étiquette de {tagged}, une fois rendue par les siens",
};
