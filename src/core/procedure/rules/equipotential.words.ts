export const en = {
  "ruleName.equipotential": "The work point has a bonded ground set of its own",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.equipotential": "Le point de travail a sa propre mise à la terre liée au poteau",
};
