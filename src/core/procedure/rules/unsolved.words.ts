export const en = {
  "ruleName.unsolved": "Where the equations have no solution, no number is believed",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.unsolved": "Où les équations n'ont pas de solution, aucun nombre n'est cru",
};
