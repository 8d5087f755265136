export const en = {
  "ruleName.stand-clear": "Nobody stands in front of a barrel that closes",
  "rule.stand-clear": "{name} is closed without standing clear of its barrel",
  "rule.stand-clear.help": "stand out of the way of the exhaust and look away, then close",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.stand-clear": "Personne devant un tube qui se ferme",
  "rule.stand-clear": "on ferme {name} sans s'écarter de son tube",
  "rule.stand-clear.help": "tenez-vous hors du souffle et détournez le regard, puis fermez",
};
