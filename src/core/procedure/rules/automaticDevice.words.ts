export const en = {
  "ruleName.automatic-device": "What closes by itself or from afar is blocked",
  "rule.automatic-device":
    "isolation rests on {name}, which can close by itself or from afar and is not blocked",
  "rule.automatic-device.help":
    "block {name}: disable reclosing and remote control, lock its handle, and tag it",
  "rule.automatic-device.over":
    "{name} crosses the work or hangs on its poles, and nobody asked for its reclosing to be held: a wire that touched it would be energized again and again",
  "rule.automatic-device.over.help":
    "ask the operator of {name} to hold its reclosing until everybody is clear",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.automatic-device": "Ce qui se ferme seul ou à distance est bloqué",
  "rule.automatic-device":
    "l'isolement repose sur {name}, qui peut se fermer seul ou à distance et n'est pas bloqué",
  "rule.automatic-device.help":
    "bloquez {name} : désactivez réenclenchement et télécommande, cadenassez sa poignée, et étiquetez-le",
  "rule.automatic-device.over":
    "{name} croise le travail ou est porté par les mêmes poteaux, et personne n’a demandé de bloquer son réenclenchement : un fil qui le toucherait serait remis sous tension à chaque réenclenchement",
  "rule.automatic-device.over.help":
    "demandez à l’exploitant de {name} d’en bloquer le réenclenchement jusqu’à ce que tous soient dégagés",
};
