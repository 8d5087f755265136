export const en = {
  "ruleName.grounds-left": "Nothing is energized with a ground on it",
  "rule.grounds-left": "{name} is closed while {sets} is still on what it energizes",
  "rule.grounds-left.help": "take {sets} off first, with everyone clear",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.grounds-left": "Rien n'est mis sous tension avec une terre posée",
  "rule.grounds-left": "{name} se ferme alors que {sets} est encore sur ce qu'il met sous tension",
  "rule.grounds-left.help": "ôtez d'abord {sets}, tous dégagés",
};
