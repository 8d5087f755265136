export const en = {
  "ruleName.customers-out": "Who loses supply is said",
  "rule.customers-out": "customers left without supply by {name}: {count}",
  "rule.customers-out.critical": "customers left without supply by {name}: {count}, critical: {critical}",
  "rule.customers-out.help": "tell the critical customers before the switch is opened",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.customers-out": "On dit qui perd l'alimentation",
  "rule.customers-out": "clients privés d'alimentation par {name} : {count}",
  "rule.customers-out.critical":
    "clients privés d'alimentation par {name} : {count}, dont critiques : {critical}",
  "rule.customers-out.help": "prévenez les clients critiques avant d'ouvrir",
};
