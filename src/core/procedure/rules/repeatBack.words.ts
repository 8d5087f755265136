export const en = {
  "ruleName.repeat-back": "An order is said back before it is carried out",
  "rule.repeat-back": "the order of step {n} is carried out before it is repeated back",
  "rule.repeat-back.help": "repeat the order to the one who gave it, and hear that it was right, first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.repeat-back": "Une consigne est répétée avant d'être exécutée",
  "rule.repeat-back": "la consigne de l'étape {n} est exécutée avant d'être répétée",
  "rule.repeat-back.help": "répétez d'abord la consigne à qui l'a donnée, et entendez qu'elle est exacte",
};
