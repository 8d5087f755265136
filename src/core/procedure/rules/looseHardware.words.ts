export const en = {
  "ruleName.loose-hardware": "Nothing is worked with a stick while something hangs loose",
  "rule.loose-hardware": "operating {name} shakes the pole, and {loose} hangs loose or is failing there",
  "rule.loose-hardware.ground":
    "putting {name} on shakes the pole, and {loose} hangs loose or is failing there",
  "rule.loose-hardware.help": "secure {loose} or cut it clear first, from where it cannot fall on anyone",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.loose-hardware": "Rien ne se travaille à la perche tant qu'une pièce pend",
  "rule.loose-hardware": "manœuvrer {name} secoue le poteau, et {loose} y pend ou y cède",
  "rule.loose-hardware.ground": "poser {name} secoue le poteau, et {loose} y pend ou y cède",
  "rule.loose-hardware.help": "assurez d'abord {loose} ou dégagez-le, d'où il ne peut tomber sur personne",
};
