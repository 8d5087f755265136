export const en = {
  "ruleName.ground-on-live": "No ground goes on what is supplied",
  "rule.ground-on-live":
    "{set} goes onto {where}, which is {state} at {volts} V: {amps} A flows through the set",
  "rule.ground-on-live.help": "open what feeds {where}, tag it, and test before grounding",
  "rule.ground-on-live.spike":
    "the spike goes into {where}, which is {state} at {volts} V: {amps} A flows through the spike",
  "rule.ground-on-live.spike.help":
    "have what feeds {where} opened and tagged, test and ground at both ends, trace the cable from there, and only then drive the spike; the piece that was hit is shorted until work at that place cuts it out",
  "rule.ground-on-live.off":
    "{set} comes off {where} while a supply feeds it: {amps} A flows through the set, and the line is live without it",
  "rule.ground-on-live.off.help":
    "leave the set on, stand clear, and have what feeds {where} opened and tagged first",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.ground-on-live": "Aucune terre ne se pose sur ce qui est alimenté",
  "rule.ground-on-live":
    "{set} se pose sur {where}, qui est {state} à {volts} V : {amps} A passent dans le jeu",
  "rule.ground-on-live.help":
    "ouvrez ce qui alimente {where}, étiquetez-le, et vérifiez avant de mettre à la terre",
  "rule.ground-on-live.spike":
    "le piquage atteint {where}, qui est {state} à {volts} V : {amps} A passent dans la pointe",
  "rule.ground-on-live.spike.help":
    "faites ouvrir et étiqueter ce qui alimente {where}, vérifiez et mettez à la terre aux deux bouts, identifiez le câble depuis là, et ne piquez qu'ensuite ; le tronçon touché reste en court-circuit jusqu'à ce qu'un travail à cet endroit l'enlève",
  "rule.ground-on-live.off":
    "{set} est ôté de {where} alors qu'une source l'alimente : {amps} A passent dans le jeu, et sans lui la ligne est sous tension",
  "rule.ground-on-live.off.help":
    "laissez le jeu en place, écartez-vous, et faites d'abord ouvrir et étiqueter ce qui alimente {where}",
};
