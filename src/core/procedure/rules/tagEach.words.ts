export const en = {
  "ruleName.tag-each": "Every opening that keeps the work dead has a tag",
  "rule.tag-each": "the {verb} begins while {name}, which keeps the work isolated, has no tag",
  "rule.tag-each.help": "tag {name} first",
  "rule.tag-each.joined":
    "the {verb} begins while {name} hangs on the work with nothing open between: started, it feeds it",
  "rule.tag-each.joined.help":
    "open and tag what parts {name} from the work, or, where nothing opens, hang a tag on it: its owner's word and a ground set are no open point",
  "rule.tag-each.thrown":
    "the {verb} begins while {name} alone parts a machine that runs from the work, and has no tag",
  "rule.tag-each.thrown.help":
    "nobody sees into it: pull the meter or open what stands between, and tag that; at the least {name} has a tag",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.tag-each": "Chaque ouverture qui tient le travail hors tension a une étiquette",
  "rule.tag-each": "on commence à {verb} alors que {name}, qui garde le travail isolé, n'a pas d'étiquette",
  "rule.tag-each.help": "étiquetez d'abord {name}",
  "rule.tag-each.joined":
    "on commence à {verb} alors que {name} est reliée au travail sans rien d'ouvert entre les deux : en marche, elle l'alimente",
  "rule.tag-each.joined.help":
    "ouvrez et étiquetez ce qui sépare {name} du travail ou, si rien ne s'ouvre, mettez-y une étiquette : la parole du propriétaire et une mise à la terre ne sont pas un point ouvert",
  "rule.tag-each.thrown":
    "on commence à {verb} alors que {name} sépare seul du travail une machine en marche, et n’a pas d’étiquette",
  "rule.tag-each.thrown.help":
    "personne ne voit dedans : retirez le compteur ou ouvrez ce qui est entre les deux, et étiquetez-le ; au moins {name} a une étiquette",
};
