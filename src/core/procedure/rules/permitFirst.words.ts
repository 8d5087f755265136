export const en = {
  "ruleName.permit-first": "A line section is worked only under a permit that is held",
  "rule.permit-first": "{name} is operated without a held permit, and {why}",
  "rule.permit-first.work": "work begins at {name} without a held permit, and {why}",
  "rule.permit-first.unrequested": "a permit is received that nobody has requested",
  "rule.permit-first.help":
    "request the permit from the system operator, receive it and repeat it back first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.permit-first": "Une section de ligne ne se travaille qu'avec une autorisation en main",
  "rule.permit-first": "on manœuvre {name} sans autorisation détenue, et {why}",
  "rule.permit-first.work": "le travail commence à {name} sans autorisation détenue, et {why}",
  "rule.permit-first.unrequested": "une autorisation est reçue que personne n'a demandée",
  "rule.permit-first.help": "demandez l'autorisation à l'exploitant, recevez-la et répétez-la d'abord",
};
