export const en = {
  "ruleName.customers-machine": "A customer’s machine is not started by the crew",
  "rule.customers-machine": "the crew starts {name}, which is a customer’s",
  "rule.customers-machine.help": "leave it off; its owner starts it when the line is theirs again",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.customers-machine": "L’équipe ne démarre pas la machine d’un client",
  "rule.customers-machine": "l’équipe démarre {name}, qui est à un client",
  "rule.customers-machine.help": "la laisser arrêtée ; son propriétaire la démarre quand la ligne est rendue",
};
