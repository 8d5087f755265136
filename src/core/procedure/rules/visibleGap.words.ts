export const en = {
  "ruleName.visible-gap": "Isolation rests on a gap that one can see",
  "rule.visible-gap": "isolation rests on {name}, whose open gap cannot be seen",
  "rule.visible-gap.help": "open something in series with {name} whose gap can be seen, and tag it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.visible-gap": "L'isolement repose sur une coupure que l'on voit",
  "rule.visible-gap": "l'isolement repose sur {name}, dont l'ouverture ne se voit pas",
  "rule.visible-gap.help":
    "ouvrez en série avec {name} quelque chose dont l'ouverture se voit, et étiquetez-le",
};
