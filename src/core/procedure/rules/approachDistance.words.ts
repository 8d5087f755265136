export const en = {
  "ruleName.approach-distance": "What stays live near the work is out of reach or covered",
  "rule.approach-distance.within": "within arm's reach of what is changed and bare: {hot}, {volts} V; {keep}",
  "rule.approach-distance.enclosure":
    "within reach of the hands in the same enclosure and bare: {hot}, {volts} V; cover it or {keep}",
  "rule.approach-distance": "still energized within reach of the work: {hot}, {volts} V; {keep} or cover it",
  "rule.approach-distance.pole":
    "still energized on the same pole: {hot}, {volts} V; the drawing has no distance, so {keep}",
  "rule.approach-distance.ungrounded":
    "within reach of the work and not grounded, so it counts as energized: {hot}, {volts} V; ground it too, {keep}, or cover it",
  "rule.approach-distance.nearby": "{name} hangs {spacing} m from the line, nearer than {distance}",
  "rule.approach-distance.keep": "keep {distance} away",
  "rule.approach-distance.keep.contact": "avoid all contact",
  "rule.approach-distance.keep.beyond": "keep farther away than the table goes",
  "rule.approach-distance.help": "cover {hot}, or keep clear and wear {gloves}",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.approach-distance": "Ce qui reste sous tension près du travail est hors de portée ou couvert",
  "rule.approach-distance.within": "à portée de bras de ce qu’on change et à nu : {hot}, {volts} V ; {keep}",
  "rule.approach-distance.enclosure":
    "à portée de main dans la même enveloppe et à nu : {hot}, {volts} V ; couvrez-le ou {keep}",
  "rule.approach-distance":
    "encore sous tension à portée du travail : {hot}, {volts} V ; {keep} ou couvrez-le",
  "rule.approach-distance.pole":
    "encore sous tension sur le même poteau : {hot}, {volts} V ; le dessin ne donne pas de distance, donc {keep}",
  "rule.approach-distance.ungrounded":
    "à portée du travail et sans mise à la terre, donc réputé sous tension : {hot}, {volts} V ; mettez-le aussi à la terre, {keep} ou couvrez-le",
  "rule.approach-distance.nearby": "{name} pend à {spacing} m de la ligne, moins que {distance}",
  "rule.approach-distance.keep": "restez à {distance}",
  "rule.approach-distance.keep.contact": "évitez tout contact",
  "rule.approach-distance.keep.beyond": "restez plus loin que la table ne va",
  "rule.approach-distance.help": "couvrez {hot}, ou tenez-vous à l'écart et portez {gloves}",
};
