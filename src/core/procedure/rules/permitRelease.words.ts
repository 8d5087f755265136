export const en = {
  "ruleName.permit-release": "The permit is released before its section is energized",
  "rule.permit-release.held": "{name} energizes the section while its permit is still held",
  "rule.permit-release.help": "release the permit to the system operator first",
  "rule.permit-release.word": "{name} energizes the section without the system operator's word, and {why}",
  "rule.permit-release.word.help": "ask the system operator before closing",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.permit-release": "L'autorisation est rendue avant que sa section revienne sous tension",
  "rule.permit-release.held":
    "{name} met la section sous tension alors que son autorisation est encore détenue",
  "rule.permit-release.help": "rendez d'abord l'autorisation à l'exploitant",
  "rule.permit-release.word": "{name} met la section sous tension sans la parole de l'exploitant, et {why}",
  "rule.permit-release.word.help": "interrogez l'exploitant avant de fermer",
};
