/** Les questions des exercices et leurs réponses. */
export const drill = {
  "drill.worksheet": "Feuille d'exercices",
  "drill.mapOf": "Le plan, sans ce qui est sous tension : {task}",
  "drill.mapOnly":
    "C'est le plan. Il ne dit rien de ce qui est sous tension et peut se tromper : notez à côté ce que vous voyez, ce que vous testez et ce qu'on vous dit.",
  "drill.key": "Corrigé de la feuille",
  "drill.name": "Nom",
  "drill.date": "Date",
  "drill.how.one": "Une seule réponse est juste.",
  "drill.how.all": "Cocher toutes les réponses justes.",
  "drill.how.order": "Les numéroter dans l'ordre.",
  "drill.ask.live": "Qu'est-ce qui est sous tension sur le dessin ?",
  "drill.ask.oneWrong":
    "Tout ce qui isole est ouvert ; rien n'est étiqueté, bloqué ni mis à la terre. Qu'est-ce qui, à soi seul, remet sous tension : {name} ?",
  "drill.ask.detector": "Que montrera le détecteur à {where} ?",
  "drill.ask.tool": "Cela peut-il se faire comme dessiné, et quel courant est coupé : {step} ?",
  "drill.ask.ground":
    "La section est ouverte, étiquetée et vérifiée. Où faut-il poser la mise à la terre pour le travail à : {name} ?",
  "drill.ask.order": "Mettre ces étapes dans l'ordre ; ce qui vient avant est fait.",
  "drill.ask.mistake":
    "Une étape manque dans cet ordre, ou n'est pas à sa place. À quelle étape une règle est-elle enfreinte en premier ?",
  "drill.ask.look":
    "Tout ce qui isole est ouvert ; rien n'est étiqueté, bloqué ni mis à la terre. Qu'iriez-vous voir d'abord, pour le travail à : {name} ?",
  "drill.look": "s'il se peut que ceci arrive : {what}",
  "drill.volts": "environ {volts} V",
  "drill.volts.none": "aucune tension (moins de {limit} V)",
  "drill.tool.may": "oui : environ {amps} A sont coupés",
  "drill.tool.mayNot": "non : environ {amps} A seraient coupés",
  "drill.way": "par {path}",
  "drill.way.back": "à rebours, par {path}",
  "drill.way.induced": "par couplage avec une ligne voisine",
  "drill.why.hot": "{where} : {way}.",
  "drill.why.cold":
    "Ce que rien d'enclenché n'atteint, par des appareils fermés ou à rebours par un transformateur, n'est pas sous tension sur le dessin. Ce n'est hors tension qu'une fois vérifié et mis à la terre.",
  "drill.why.induced": "Rien ne l'alimente ; une ligne voisine y induit une tension.",
  "drill.why.detector": "{where} est à {volts} V par rapport à la terre.",
  "drill.why.oneWrong": "Chacun des autres le laisse tel quel, tant que rien d'autre ne va mal.",
  "drill.why.toolMay":
    "{name}, phase {letter} : {amps} A, et avec cet outil l'appareil peut couper {limit} A.",
  "drill.why.toolMayNot":
    "{name}, phase {letter} : {amps} A, et avec cet outil l'appareil coupe {limit} A au plus. Délester d'abord ailleurs.",
  "drill.why.ground":
    "Une mise à la terre au point de travail même, reliée au poteau, garde le monteur et le conducteur au même potentiel ; ailleurs, la tension le long de la ligne se met entre eux (29 CFR 1910.269(n)(3)).",
  "drill.why.order": "Tout autre ordre de ces étapes enfreint une règle.",
  "drill.why.tooEarly": "Trop tôt : {step} : {why} ({citation}).",
  "drill.why.rule": "{why} ({citation}).",
  "drill.why.look":
    "De ces faits, celui-ci décide à lui seul si le conducteur est sous tension ; les autres n'y changent rien à eux seuls.",
  "path.notARecord": "Ce n'est pas le relevé de ce que quelqu'un a appris.",
  "path.newerRecord": "Une version plus récente a écrit ce relevé : faites d'abord la mise à jour.",
  "path.brokenRecord": "L'entrée {n} de ce relevé est illisible.",
};
