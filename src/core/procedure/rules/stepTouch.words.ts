export const en = {
  "ruleName.step-touch": "People are kept clear of the pole, the truck and the rods",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.step-touch": "Le monde reste à l'écart du poteau, du camion et des piquets",
};
