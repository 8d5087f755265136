/** Ce que trouve l'examen des dangers. */
export const hazard = {
  "hazard.unsolved":
    "les équations du dessin n'ont pas pu être résolues : aucun nombre d'ici n'est à croire et tout conducteur compte comme sous tension",
  "hazard.loadsUnsettled":
    "des charges à courant ou à puissance constants, ou des machines à puissance fixée, ne convergent pas ; ces charges sont prises comme impédances constantes, ces machines comme une tension derrière leur réactance",
  "hazard.brokenEnergized": "{name} est rompu et sous tension sur {phases}",
  "hazard.brokenEnergized.help":
    "le faire garder, tenir tout le monde à l’écart, et ouvrir ce qui l’alimente de part et d’autre",
  "hazard.faultStands":
    "{name} est alimenté sur {phases} d’après le dessin : {amps} A y passent, et rien de dessiné ne l’élimine à coup sûr : {sees}",
  "hazard.faultStands.unearthed":
    "sa source n’est pas mise à la terre, si bien qu’aucun fusible ne voit une seule phase à la terre ; un relais de terre à la source devrait la voir, et une deuxième phase à la terre est un court-circuit",
  "hazard.faultStands.mayHold": "le fusible {link} de {device} est le premier à le voir, et peut tenir",
  "hazard.faultStands.trips":
    "{device} est le premier à le voir, et son seuil de déclenchement n’est pas dessiné",
  "hazard.faultStands.machine": "{machine} continue de l’alimenter, quel que soit le fusible qui fond",
  "hazard.faultStands.none": "la protection de la source, qui n’est pas dessinée, devrait le voir",
  "hazard.faultStands.help":
    "faire garder l’endroit et tenir tout le monde à l’écart de ce qu’il touche ; faire ouvrir là où le défaut peut être coupé",
  "hazard.faultStands.help.at":
    "faire garder l’endroit et tenir tout le monde à l’écart de ce qu’il touche et de la descente de terre du poteau, qui sont à {at} V de la terre d’après le dessin ; faire ouvrir là où le défaut peut être coupé",
  "hazard.faultStands.help.beside":
    "faire garder l’endroit et tenir tout le monde à l’écart de ce qu’il touche ; une phase à côté est à {beside} V de la terre ; faire ouvrir là où le défaut peut être coupé",
  "hazard.faultStands.help.both":
    "faire garder l’endroit et tenir tout le monde à l’écart de ce qu’il touche et de la descente de terre du poteau, qui sont à {at} V de la terre d’après le dessin ; une phase à côté est à {beside} V ; faire ouvrir là où le défaut peut être coupé",
  "hazard.faultStands.link":
    "{name} est alimenté sur {phases} d’après le dessin : le fusible {link} de {device} élimine ses {amps} A en {seconds} s, et il est dessiné intact",
  "hazard.faultStands.link.help":
    "regarder si ce fusible a fondu ; tant qu’on ne l’a pas vu, faire garder l’endroit et le tenir pour être sous tension",
  "volts.told": "{volts} V",
  "volts.underOne": "moins de 1 V",
  "hazard.moreThan": "plus de {volts}",
  "hazard.openNeutral": "le neutre de {name} est ouvert à côté de conducteurs sous tension",
  "hazard.openNeutral.help": "enlever la charge au-delà, et le rabouter avec des gants après vérification",
  "hazard.singlePhasing":
    "il manque une phase à {name} tel que dessiné : de {least} à {most} V entre ses phases",
  "hazard.singlePhasing.help":
    "faites arrêter ce qui y tourne à son propre disjoncteur jusqu’au retour de toutes les phases ; trouvez le fusible ou le conducteur ouvert",
  "hazard.legVolts": "{where} est à {volts} V de son neutre au lieu de {nominal} V",
  "hazard.legVolts.help":
    "chercher un neutre ouvert vers le transformateur, et retirer les compteurs au-delà",
  "hazard.closedBetween":
    "{name} est dessiné fermé et joint sur {letter} deux alimentations écartées de {degrees}° et de {volts} V : un court-circuit",
  "hazard.closedBetween.help":
    "allez voir dans quelle position il est et quelle phase est laquelle ; s’il en est ainsi, tenez-vous à l’écart et faites-le ouvrir de là où le défaut peut être coupé",
  "hazard.closedBetween.notInStep":
    "{name} est dessiné fermé et joint deux alimentations que rien ne tient en synchronisme : jusqu’à {volts} V peuvent se tenir entre elles",
  "hazard.closedBetween.notInStep.help":
    "allez voir s’il est fermé ; s’il en est ainsi, demandez à l’exploitant ce qui tient les deux en synchronisme, et retirez l’une des deux",
  "hazard.regulatorBypassed":
    "{name} est dessiné contourné hors de la position neutre sur {phases} : un courant sans limite tourne par son enroulement série",
  "hazard.regulatorBypassed.help":
    "allez voir sur quelle prise il se trouve et si sa dérivation est fermée ; s’il en est ainsi, tenez-vous à l’écart des deux et faites ouvrir la ligne",
  "hazard.neutralVolts": "{where} est à {volts} V de la terre tel que dessiné",
  "hazard.neutralVolts.notKnown":
    "la tension de {where} à la terre n'est pas connue, car la solution ne se stabilise pas",
  "hazard.neutralVolts.help":
    "tenez-le pour sous tension ; cherchez une coupure du neutre vers la source, et un mauvais piquet de terre",
  "hazard.inducedExposure":
    "la phase {letter} est induite, et avec les mises à la terre en place {milliamps} mA pourraient encore traverser un corps de 500 Ω, {volts} V pour une limite de {limit} V",
  "hazard.inducedExposure.help":
    "posez une mise à la terre au point de travail même, ou rapprochez les mises à la terre",
  "hazard.inducedExposure.notKnown":
    "la phase {letter} est induite, et ce qu'un travailleur pourrait ressentir même avec les mises à la terre n'est pas connu : comptez plus que {limit} V",
  "hazard.noGroundHere":
    "aucune mise à la terre à {at} même : le travailleur n'est pas relié à ce qu'il touche",
  "hazard.poleNotBonded":
    "la mise à la terre à {at} n'est pas reliée au poteau, donc le travailleur non plus",
  "hazard.equipotential.help":
    "posez une mise à la terre au point de travail et reliez-la au poteau ; sans elle un travailleur ressent la tension à la terre",
  "hazard.stepTouch": "{when}, {lifted} sont à {volts} V au-dessus du sol où l'on se tient",
  "hazard.stepTouch.barricaded":
    "{when}, {lifted} sont à {volts} V au-dessus du sol autour ; l'endroit est balisé",
  "hazard.stepTouch.notKnown":
    "{when}, {lifted} peuvent être au-dessus du sol où l'on se tient ; à combien de volts n'est pas connu",
  "hazard.stepTouch.pole": "le poteau, le camion et les piquets",
  "hazard.stepTouch.enclosure": "l’enveloppe, le camion et les piquets",
  "hazard.stepTouch.bonded": "tout ce qui est relié au neutre à cet endroit, le camion et les piquets",
  "hazard.stepTouch.help.bonded":
    "tenez personnes et matériel à l'écart de tout ce qui est relié au neutre à cet endroit, du camion et des piquets : balisez {at}",
  "hazard.stepTouch.help.enclosure":
    "tenez personnes et matériel à l’écart de l’enveloppe, du camion et des piquets : balisez {at}",
  "hazard.stepTouch.help.pole":
    "tenez personnes et matériel à l'écart du pied du poteau, du camion et des piquets : balisez {at}",
  "hazard.neutralInHand.notTied":
    "rien sur cette structure, sauf ce qu'on a en main, ne relie à la terre le neutre à {at}",
  "hazard.neutralInHand.lifted": "{when}, le neutre en main à {at} est à {volts} V par rapport à la terre",
  "hazard.neutralInHand.help":
    "posez ici une mise à la terre avec piquet, ou pontez la coupure, avant de toucher au neutre, et condamnez ce qui pourrait le faire monter ; vérifiez-le d'abord",
  "hazard.threatsNotAll.1":
    "trop de choses peuvent changer ici pour calculer toutes les combinaisons : les façons où une chose tourne mal sont toutes données, de celles où il en faut deux ou trois il peut en manquer",
  "hazard.threatsNotAll.2":
    "trop de choses peuvent changer ici pour calculer toutes les combinaisons : les façons où une ou deux choses tournent mal sont toutes données, de celles où il en faut trois il peut en manquer",
  "hazard.stepTouchNotAll":
    "trop de choses peuvent changer ici pour calculer toutes les combinaisons : on ne sait pas si l'une porterait le poteau, le camion et les piquets à une tension dangereuse",
  "hazard.threatsNotAll.help":
    "tenez pour possible ce qui n'est pas donné ; ouvrez, étiquetez et bloquez plus près du travail, ou dessinez moins de ce qui est loin",
  "hazard.feedNotDrawn":
    "rien sur le dessin ne pourrait jamais alimenter {letters} ici, donc ce qui l'alimente manque au dessin : rien ne dit que c'est hors tension",
  "hazard.feedNotDrawn.help":
    "dessiner ce qui l'alimente, ou remettre la pince ou la portée qui manque en chemin",
  "hazard.neutralVolts.noRods":
    "{where} est à {volts} V par rapport à la terre tel que dessiné, sur une ligne sans aucun piquet dessiné ; avec {rods} piquets par kilomètre ce serait {left} V",
  "hazard.loadsUnsettledAfter":
    "des charges à courant ou à puissance constants, ou des machines à puissance fixée, ne convergent pas après certaines des façons dont ceci pourrait être remis sous tension ; ces charges y comptent comme des impédances constantes, ces machines comme une tension derrière leur réactance",
} as const;
