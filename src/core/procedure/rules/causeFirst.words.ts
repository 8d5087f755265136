export const en = {
  "ruleName.cause-first":
    "What blew a link, or tripped what recloses, is looked for before it is closed again",
  "rule.cause-first": "{name} is closed again, and nobody has looked for what blew its link",
  "rule.cause-first.tripped":
    "{name} was found open and may have tripped, and it is closed with nobody having walked the line beyond it",
  "rule.cause-first.tripped.help":
    "walk what lies beyond it first and look at every pole; where it was opened on purpose, find out by whom",
  "rule.cause-first.help": "walk what lies beyond it first, and look at every pole",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.cause-first":
    "On cherche ce qui a fait fondre un fusible, ou déclencher un appareil, avant de le refermer",
  "rule.cause-first": "on referme {name}, et personne n’a cherché ce qui a fait fondre son fusible",
  "rule.cause-first.tripped":
    "{name} a été trouvé ouvert et a pu déclencher, et on le ferme sans que personne ait parcouru la ligne au-delà",
  "rule.cause-first.tripped.help":
    "parcourir d’abord ce qui est au-delà, et regarder chaque poteau ; s’il a été ouvert exprès, trouver par qui",
  "rule.cause-first.help": "parcourir d’abord ce qui est au-delà, et regarder chaque poteau",
};
