export const en = {
  "ruleName.automatic-device": "What closes by itself or from afar is blocked",
  "rule.automatic-device":
    "isolation rests on {name}, which can close by itself or from afar and is not blocked",
  "rule.automatic-device.help":
    "block {name}: disable reclosing and remote control, lock its handle, and tag it",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.automatic-device": "Ce qui se ferme seul ou à distance est bloqué",
  "rule.automatic-device":
    "l'isolement repose sur {name}, qui peut se fermer seul ou à distance et n'est pas bloqué",
  "rule.automatic-device.help":
    "bloquez {name} : désactivez réenclenchement et télécommande, cadenassez sa poignée, et étiquetez-le",
};
