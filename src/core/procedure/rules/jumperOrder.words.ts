export const en = {
  "ruleName.jumper-order": "A jumper goes on at its dead end first, off at its live end first",
  "rule.jumper-order.on": "{name} is made at its live end first, so its other end hangs live in the hand",
  "rule.jumper-order.on.help": "make the dead end first, then the live end",
  "rule.jumper-order.off": "{name} comes off at its dead end first, so its loose end stays live",
  "rule.jumper-order.off.help": "take the live end off first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.jumper-order": "Un pont se pose par son bout mort, se retire par son bout sous tension",
  "rule.jumper-order.on":
    "{name} se raccorde d'abord du côté sous tension, donc l'autre bout pend sous tension dans la main",
  "rule.jumper-order.on.help": "raccordez d'abord le côté hors tension, puis le côté sous tension",
  "rule.jumper-order.off":
    "{name} se détache d'abord du côté hors tension, donc son bout libre reste sous tension",
  "rule.jumper-order.off.help": "détachez d'abord le côté sous tension",
};
