export const en = {
  "ruleName.loose-hardware": "Nothing is worked with a stick while something hangs loose",
  "rule.loose-hardware": "operating {name} shakes the pole, and {loose} {is} there",
  "rule.loose-hardware.loose": "hangs loose",
  "rule.loose-hardware.failed": "has failed",
  "rule.loose-hardware.burned": "is burned",
  "rule.loose-hardware.cracked": "is cracked and may break",
  "rule.loose-hardware.broken": "is broken",
  "rule.loose-hardware.leaning": "is leaning",
  "rule.loose-hardware.leaking": "is leaking",
  "rule.loose-hardware.rotten": "is rotten",
  "rule.loose-hardware.ground": "putting {name} on shakes the pole, and {loose} {is} there",
  "rule.loose-hardware.help": "secure {loose} or cut it clear first, from where it cannot fall on anyone",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.loose-hardware": "Rien ne se travaille à la perche tant qu'une pièce pend",
  "rule.loose-hardware": "manœuvrer {name} secoue le poteau, et {loose} y {is}",
  "rule.loose-hardware.loose": "pend",
  "rule.loose-hardware.failed": "a cédé",
  "rule.loose-hardware.burned": "a brûlé",
  "rule.loose-hardware.cracked": "a des fêlures et peut casser",
  "rule.loose-hardware.broken": "a cassé",
  "rule.loose-hardware.leaning": "penche",
  "rule.loose-hardware.leaking": "fuit",
  "rule.loose-hardware.rotten": "a pourri",
  "rule.loose-hardware.ground": "poser {name} secoue le poteau, et {loose} y {is}",
  "rule.loose-hardware.help": "assurez ou dégagez d'abord {loose}, de là où rien ne peut tomber sur personne",
};
