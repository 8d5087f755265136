export const en = {
  "ruleName.hands-on-live": "Hands come to a live conductor by a method of live work alone",
  "rule.hands-on-live.bare": "bare hands {verb} at {where}, which stands at {volts} V",
  "rule.hands-on-live.gloves":
    "gloves of class {given} do not keep {nominal} V off: hands {verb} at {where}, at {volts} V",
  "rule.hands-on-live.noClass": "hands {verb} at {where}, at {volts} V, in gloves whose class nobody said",
  "rule.hands-on-live.help":
    "make it dead, test and ground it; or work it live by a method for its volts: sticks, or {gloves}",
  "rule.hands-on-live.reclosing": "{name} feeds what is worked live and can reclose",
  "rule.hands-on-live.alone": "live work over 600 V with one person on the pole",
  "rule.hands-on-live.alone.help": "a second qualified person is there, 1910.269(l)(2)(i)",
  "rule.hands-on-live.cover": "within reach of the hands and bare: {where}",
  "rule.hands-on-live.cover.help": "cover what is within reach before hands come to the line",
  "rule.hands-on-live.neutral": "the neutral of {name} is open, and nobody has tested what stands on it",
  "rule.hands-on-live.neutral.help":
    "an open neutral is a hot conductor: test both ends first, and splice it in gloves",
  "rule.hands-on-live.ungrounded":
    "bare hands {verb} at {where}, which nobody has grounded: what is not grounded counts as energized",
  "rule.hands-on-live.ungrounded.help": "test and ground it first, or work it by a method of live work",
  "rule.hands-on-live.untested": "bare hands {verb} at {where}, which nobody has tested",
  "rule.hands-on-live.untested.help":
    "test it first, the detector proven right before and after, or wear gloves",
} as const;

export const fr: Readonly<Record<keyof typeof en, string>> = {
  "ruleName.hands-on-live":
    "On ne touche un conducteur sous tension que par une méthode de travail sous tension",
  "rule.hands-on-live.bare": "mains nues sur {where}, qui est à {volts} V ({verb})",
  "rule.hands-on-live.gloves":
    "des gants de classe {given} n’isolent pas de {nominal} V : mains sur {where}, à {volts} V ({verb})",
  "rule.hands-on-live.noClass":
    "mains sur {where}, à {volts} V, avec des gants dont la classe n’est pas dite ({verb})",
  "rule.hands-on-live.help":
    "mettre hors tension, vérifier et mettre à la terre ; ou travailler sous tension par une méthode qui convient : perches, ou {gloves}",
  "rule.hands-on-live.reclosing": "{name} alimente ce qu’on travaille sous tension et peut réenclencher",
  "rule.hands-on-live.alone": "travail sous tension à plus de 600 V par une personne seule",
  "rule.hands-on-live.alone.help": "une deuxième personne qualifiée est là, 1910.269(l)(2)(i)",
  "rule.hands-on-live.cover": "à portée des mains et à nu : {where}",
  "rule.hands-on-live.cover.help": "recouvrir ce qui est à portée avant de toucher à la ligne",
  "rule.hands-on-live.neutral": "le neutre de {name} est ouvert, et personne n’a vérifié ce qu’il porte",
  "rule.hands-on-live.neutral.help":
    "un neutre ouvert est un conducteur sous tension : vérifier les deux bouts d’abord, et l’épisser avec des gants",
  "rule.hands-on-live.ungrounded":
    "mains nues sur {where}, que personne n’a mis à la terre : ce qui n’est pas mis à la terre compte comme sous tension ({verb})",
  "rule.hands-on-live.ungrounded.help":
    "vérifier et mettre à la terre d’abord, ou travailler par une méthode de travail sous tension",
  "rule.hands-on-live.untested": "mains nues sur {where}, que personne n’a vérifié ({verb})",
  "rule.hands-on-live.untested.help":
    "vérifier d’abord, le détecteur éprouvé juste avant et juste après, ou mettre des gants",
};
