export const en = {
  "ruleName.work-not-safe": "Hands touch only what is grounded, tested and two mistakes away",
  "rule.work-not-safe.spike": "work begins on the cable at {name}, and nobody has traced or spiked it",
  "rule.work-not-safe.spike.help":
    "test and ground it at its ends, then trace it, or drive the spike through it from afar: in the hole a detector touches nothing",
  "rule.work-not-safe.cut": "the cable is cut at {name}, and its part {part} has no ground of its own beyond",
  "rule.work-not-safe.cut.help":
    "test and ground the far end of {part} too: once it is cut both parts are in the hand",
  "rule.work-not-safe.looseEnd": "{name} has parted, and its end at {where} has no ground of its own",
  "rule.work-not-safe.looseEnd.help": "test and ground {where} too: both ends come into the hand",
  "rule.work-not-safe.takenAway":
    "{name} comes away, and {where}, which stays, is grounded through it alone or not at all",
  "rule.work-not-safe.takenAway.help": "ground {where} too, or bond across before it is taken off",
  "rule.work-not-safe": "{how}: {threats}",
  "rule.work-not-safe.live": "work begins at {name} while it is live",
  "rule.work-not-safe.live.help":
    "open, tag, test and ground every way in, or work by the rules for live lines",
  "rule.work-not-safe.could-go-live": "work begins at {name}, which one mistake could make live",
  "rule.work-not-safe.could-go-live.help":
    "control each of these: open and tag it, block it, or put the grounds where they hold it",
  "rule.work-not-safe.isolated": "work begins at {name}, which is isolated and not proven dead",
  "rule.work-not-safe.isolated.help":
    "test every conductor after the last switching, with the detector proven, then ground at the work point",
  "rule.work-not-safe.untested":
    "work begins at {name}, and nobody has tested {where} since the last switching",
  "rule.work-not-safe.untested.help":
    "test {where}, with the detector proven right before and after, then ground at the work point",
  "rule.work-not-safe.induced":
    "work begins at {name}, where the last test showed {volts} V at {where}, induced by what runs beside it",
  "rule.work-not-safe.induced.help":
    "test once more with the grounds on, the detector proven right before and after: what is induced is gone then",
  "rule.work-not-safe.grounded": "work begins at {name}",
  "rule.work-not-safe.grounded.help": "ground and test at the work point",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.work-not-safe": "Les mains ne touchent que ce qui est à la terre, vérifié et à deux erreurs près",
  "rule.work-not-safe.spike":
    "le travail commence sur le câble à {name}, et personne ne l'a identifié ni piqué",
  "rule.work-not-safe.spike.help":
    "vérifiez-le et mettez-le à la terre à ses extrémités, puis identifiez-le, ou piquez-le à distance : dans la fouille, un détecteur ne touche rien",
  "rule.work-not-safe.cut":
    "le câble est coupé à {name}, et sa partie {part} n'a pas de mise à la terre à elle au-delà",
  "rule.work-not-safe.cut.help":
    "vérifiez et mettez à la terre l'autre extrémité de {part} aussi : une fois coupé, on a les deux parties en main",
  "rule.work-not-safe.looseEnd": "{name} a rompu, et son bout à {where} n’a pas de mise à la terre à lui",
  "rule.work-not-safe.looseEnd.help":
    "vérifier et mettre à la terre {where} aussi : les deux bouts viennent dans la main",
  "rule.work-not-safe.takenAway":
    "on dépose {name}, et {where}, qui reste, n’a de terre que par là, ou pas du tout",
  "rule.work-not-safe.takenAway.help": "mettez aussi {where} à la terre, ou posez un pont avant de déposer",
  "rule.work-not-safe": "{how} : {threats}",
  "rule.work-not-safe.live": "le travail commence à {name} alors que c'est sous tension",
  "rule.work-not-safe.live.help":
    "ouvrez, étiquetez, vérifiez et mettez à la terre chaque entrée, ou travaillez selon les règles du travail sous tension",
  "rule.work-not-safe.could-go-live":
    "le travail commence à {name}, qu'une seule erreur pourrait mettre sous tension",
  "rule.work-not-safe.could-go-live.help":
    "parez à chacune : ouvrez et étiquetez, bloquez, ou posez les terres là où elles la tiennent",
  "rule.work-not-safe.isolated":
    "le travail commence à {name}, isolé et dont l'absence de tension n'est pas prouvée",
  "rule.work-not-safe.isolated.help":
    "vérifiez chaque conducteur après la dernière manœuvre, détecteur éprouvé, puis mettez à la terre au point de travail",
  "rule.work-not-safe.untested":
    "le travail commence à {name}, et personne n'a vérifié {where} depuis la dernière manœuvre",
  "rule.work-not-safe.untested.help":
    "vérifiez {where}, détecteur éprouvé juste avant et juste après, puis mettez à la terre au point de travail",
  "rule.work-not-safe.induced":
    "le travail commence à {name}, où la dernière vérification a montré {volts} V à {where}, induits par ce qui longe la ligne",
  "rule.work-not-safe.induced.help":
    "vérifiez de nouveau, terres posées, détecteur éprouvé juste avant et juste après : l'induction a alors disparu",
  "rule.work-not-safe.grounded": "le travail commence à {name}",
  "rule.work-not-safe.grounded.help": "mettez à la terre et vérifiez au point de travail",
};
