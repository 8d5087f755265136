/** Ce que dit la répétition : règles, conséquences, lectures, et ce que les mains ne peuvent pas. */
export const procedure = {
  "report.summary": "{file} : {steps} étapes, {dangers} danger, {warnings} avertissement, {notes} remarque",
  "report.atStep": "{file}, étape {n}",
  "report.stands": "{name}: {verdict}",
  "report.atEnd": "{file}, à la fin, {where}",
  "report.do": "à faire : {help}",
  "mark.thisStep": "cette étape",
  "mark.lastSwitching": "dernière manœuvre",
  "mark.goesOnHere": "se pose ici",
  "mark.workBegan": "le travail a commencé",
  "mark.lastUnground": "dernière terre retirée",
  "mark.onTheLine": "monde ou terres sur la ligne",
  "mark.order": "l'ordre",

  "stands.live": "sous tension",
  "stands.could-go-live": "peut revenir sous tension",
  "stands.grounded": "à la terre",
  "stands.isolated": "isolé",

  "danger.now": "sous tension maintenant à {volts} V, {exposure} V ressentis",
  "danger.if": "{upsets} : {volts} V, {exposure} V ressentis",

  "doing.brief": "tenir la réunion",
  "doing.request-permit": "demander l'autorisation",
  "doing.receive-permit": "recevoir l'autorisation",
  "doing.release-permit": "rendre l'autorisation",
  "doing.check-detector": "éprouver le détecteur",
  "doing.ask": "interroger l'exploitant",
  "doing.all-clear": "déclarer tous dégagés",
  "doing.confirm": "répéter la consigne",
  "doing.stand-clear": "s'écarter",
  "doing.hand-over": "transmettre",
  "doing.note": "noter",
  "doing.open": "ouvrir",
  "doing.close": "fermer",
  "doing.lift": "lever",
  "doing.attach": "poser",
  "doing.cut": "couper",
  "doing.join": "refaire",
  "doing.tag": "étiqueter",
  "doing.untag": "ôter l'étiquette",
  "doing.block": "bloquer",
  "doing.unblock": "débloquer",
  "doing.unground": "ôter la terre",
  "doing.pull": "retirer",
  "doing.replace": "remettre",
  "doing.refuse": "remplacer le fusible",
  "doing.remove-barrel": "retirer le tube",
  "doing.replace-barrel": "remettre le tube",
  "doing.start": "démarrer",
  "doing.stop": "arrêter",
  "doing.set-position": "mettre sur une position",
  "doing.test": "vérifier",
  "doing.ground": "mettre à la terre",
  "doing.inspect": "regarder",
  "doing.barricade": "tenir à l'écart",
  "doing.cover": "couvrir",
  "doing.uncover": "découvrir",
  "doing.secure": "assurer",
  "doing.work": "travailler",
  "doing.wait": "attendre",

  "step.noElement": "il n'y a pas d'élément {id} dans le dessin tel qu'il est",
  "step.doesNotOpen": "{name} n'est rien qui s'ouvre",
  "step.doesNotClose": "{name} n'est rien qui se ferme",
  "step.otherKind": "{name} ne se prête pas à : {verb}",
  "step.alreadyOpen": "{name} est déjà ouvert sur {phases}",
  "step.alreadyClosed": "{name} est déjà fermé sur {phases}",
  "step.alreadyThere": "{name} est déjà sur {position}",
  "step.already.tagged": "{name} a déjà une étiquette",
  "step.already.blocked": "{name} est déjà bloqué",
  "step.already.on": "{name} tourne déjà",
  "step.not.tagged": "{name} n'a pas d'étiquette",
  "step.not.blocked": "{name} n'est pas bloqué",
  "step.not.on": "{name} ne tourne pas",
  "step.seized": "{name} est grippé et ne bouge pas",
  "step.barrelOut": "le tube de {name} est retiré sur {phases}",
  "step.barrelIn": "le tube de {name} est en place sur {phases}",
  "step.blocked": "{name} est bloqué : débloquez-le avant de le fermer",
  "step.linkBlown":
    "l'élément fusible de {name} a fondu sur {phases} : fermer le tube ne joint rien tant qu'il n'est pas remplacé",
  "step.linkWhole": "l'élément fusible de {name} est entier sur {phases}",
  "step.groundTwice": "une mise à la terre {id} est déjà posée",
  "step.noConductor": "{at} n'a aucun conducteur que nomme cette étape",
  "step.noNeutral": "{at} n'a pas de neutre où mettre à la terre",

  "brief.planChanged": "l'ordre des étapes a changé",
  "brief.unexpected": "quelque chose n'était pas comme attendu",
  "brief.shownLive": "une vérification a montré une tension à {where}",
  "permit.generator": "une génératrice sur la section, {name}, peut l'alimenter",
  "permit.transfer": "il y a un inverseur de source sur la section, {name}",
  "permit.tie": "la section rencontre une autre alimentation à {name}",
  "permit.parallel": "la section est alimentée en parallèle par {name}",
  "permit.feed": "la section est aussi alimentée par {name}",
  "permit.line":
    "la section a {count} transformateurs, c'est donc une ligne et non la dérivation d'un seul transformateur",
  "permit.load":
    "{name} est alimenté par la même section : c'est une ligne et non la dérivation d'un seul transformateur",
  "permit.span": "la section est une ligne et non la dérivation d'un seul transformateur",

  "reading.dead": "{where} ne montre aucune tension",
  "reading.live": "{where} montre une tension : {volts} V",
  "reading.induced": "{where} montre {volts} V, induits par ce qui passe à côté",

  "breaks.tool": "l'outil de coupure en charge, prévu pour {limit} A",
  "breaks.arc-chute": "sa chambre de coupure, prévue pour {limit} A",
  "breaks.rated": "son propre pouvoir de {limit} A",
  "breaks.made-for-load": "un appareil fait pour couper sa charge ; aucun pouvoir n'est dessiné",
  "breaks.bare": "une simple ouverture, qui n'a aucun pouvoir de coupure",
  "breaks.unrated": "un contact sans pouvoir de coupure, qui peut couper {limit} A",
  "breaks.clamp": "une pince, qui peut couper {limit} A",
  "breaks.lead": "une bretelle qui s'écarte, qui peut couper {limit} A",

  "clearing.none":
    "aucun fusible du chemin ne fond ; cela dure jusqu'au déclenchement en amont, {seconds} s ou plus, s'il y en a un",
  "clearing.link": "le fusible {link} de {name} porte {amps} A et fond en {least} à {most} s",
  "clearing.fast": "le fusible {link} de {name} porte {amps} A et fond en moins d'une demi-période",
  "clearing.maybe": "le fusible {link} de {name} porte {amps} A et fond en {least} s ou pas du tout",

  "consequence.none": "il n'arrive rien que l'on puisse voir",
  "consequence.shock":
    "des mains sont sur {where} à {volts} V : {milliamps} mA dans {ohms} Ω de corps, alors que vers 10 mA une main ne peut plus lâcher",
  "consequence.charge": "{name} tient encore {volts} V et lâche {joules} J d'un coup",
  "consequence.groundedLive":
    "la terre se pose sur {where} à {volts} V : {amps} A passent dans le jeu au bout de la perche ; {clearing}",
  "consequence.spikedLive":
    "le piquage atteint {where} à {volts} V : défaut franc, {amps} A dans la pointe et un arc au câble ; {clearing}",
  "consequence.traced":
    "le signal de l’identificateur est sur {where} : c’est le câble mis à la terre à ses bouts",
  "consequence.noTrace":
    "l’identificateur ne donne aucun signal à {at} : aucune mise à la terre ne ferme la boucle, rien n’est prouvé",
  "consequence.ungroundedLive":
    "la mise à la terre quitte {where} avec {amps} A : un arc s'étire au bout de la perche, et {volts} V restent sur la ligne derrière lui",
  "consequence.closedOnto": "{name} se ferme sur {onto} : {amps} A passent ; {clearing}",
  "consequence.outOfStep":
    "{name} joint deux sources écartées de {degrees}° et de {volts} V : {amps} A y passent ; {clearing}",
  "consequence.arc":
    "{amps} A s'étirent en arc à {name} {letter}, qui peut couper {limit} A ; {volts} V aux bornes l'entretiennent",
  "consequence.clampArc":
    "la mâchoire de {name} établit {amps} A sous {volts} V : elle fait un arc en se posant",
  "consequence.openedDead": "{name} s'ouvre sans courant",
  "consequence.broken": "{name} coupe {amps} A par {by}",
  "consequence.closedDead": "{name} se ferme sans courant",
  "consequence.carries": "{name} se ferme et porte {amps} A",

  "approach.distance": "{metres} m",
  "approach.avoidContact": "aucun contact",
  "approach.beyondTable": "plus que la table n'en donne",
  "gloves.class": "gants de classe {name} (jusqu'à {volts} V)",
  "gloves.none": "aucun gant de caoutchouc n'y est prévu",

  "rule.brief-first": "le travail sur la ligne commence avant la réunion de chantier",
  "rule.brief-first.help":
    "réunissez d'abord l'équipe : dangers, méthode de travail, précautions particulières, maîtrise des sources d'énergie, équipements de protection",
  "rule.brief-again": "la réunion ne couvre plus le travail : {why}",
  "rule.brief-again.help": "arrêtez, regardez de nouveau et réunissez l'équipe sur ce qui a changé",
  "rule.permit-first": "{name} est manœuvré sans autorisation détenue, et {why}",
  "rule.permit-first.work": "le travail commence à {name} sans autorisation détenue, et {why}",
  "rule.permit-first.unrequested": "une autorisation est reçue que personne n'a demandée",
  "rule.permit-first.help": "demandez l'autorisation à l'exploitant, recevez-la et répétez-la d'abord",
  "rule.loose-hardware": "manœuvrer {name} secoue le poteau, et {loose} y pend ou y cède",
  "rule.loose-hardware.ground": "poser {name} secoue le poteau, et {loose} y pend ou y cède",
  "rule.loose-hardware.help": "assurez d'abord {loose} ou dégagez-le, d'où il ne peut tomber sur personne",
  "rule.load-break.bare":
    "{name} coupe {amps} A sur {letter}, et ni lui ni l'outil en main ne sont faits pour couper plus de {limit} A",
  "rule.load-break.unrated":
    "ouvrir {name} coupe {amps} A sur {letter} ; il n’a aucun pouvoir de coupure et peut couper {limit} A, courants de charge et à vide seulement",
  "rule.load-break.clamp":
    "lever {name} coupe {amps} A sur {letter} ; une pince peut couper {limit} A, courants de charge capacitive et à vide seulement",
  "rule.load-break.lead":
    "couper {name} interrompt {amps} A sur {letter} ; une bretelle peut couper {limit} A",
  "rule.load-break.help":
    "ôtez d'abord la charge avec ce qui est fait pour cela : un outil de coupure sur un coupe-circuit à crochets, un interrupteur prévu, les disjoncteurs des clients",
  "rule.load-break.procedure":
    "{name} coupe {amps} A sur {letter} par simple ouverture ; jusqu'à {limit} A cela repose sur la procédure de l'entreprise, pas sur un pouvoir de coupure",
  "rule.load-break.procedure.help":
    "prenez un outil de coupure en charge, ou assurez-vous que votre procédure le permet",
  "rule.load-break-rating": "{name} coupe {amps} A sur {letter}, plus que {by}",
  "rule.load-break-rating.help":
    "ôtez de la charge jusqu'à tenir dans le pouvoir de coupure, ou ouvrez ce qui est prévu pour",
  "rule.load-not-dropped": "avec {name} ouvert, {where} reste alimenté par {sources}",
  "rule.load-not-dropped.help":
    "trouvez l'autre entrée et ouvrez-la aussi avant de tenir quoi que ce soit ici pour hors tension",
  "rule.customers-out": "clients privés d'alimentation par {name} : {count}",
  "rule.customers-out.critical":
    "clients privés d'alimentation par {name} : {count}, dont critiques : {critical}",
  "rule.customers-out.help": "prévenez les clients critiques avant d'ouvrir",
  "rule.visible-gap": "l'isolement repose sur {name}, dont l'ouverture ne se voit pas",
  "rule.visible-gap.help":
    "ouvrez en série avec {name} quelque chose dont l'ouverture se voit, et étiquetez-le",
  "rule.automatic-device":
    "l'isolement repose sur {name}, qui peut se fermer seul ou à distance et n'est pas bloqué",
  "rule.automatic-device.help":
    "bloquez {name} : désactivez réenclenchement et télécommande, cadenassez sa poignée, et étiquetez-le",
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
  "rule.others-tag": "l’étiquette de {name} est celle de {owner}",
  "rule.others-tag.set": "{name} a été posée par {owner}",
  "rule.others-tag.help": "laisser tout en place et parler à {owner} ; ce qui est transmis est à soi",
  "rule.others-tag.permit": "l’autorisation est rendue par {by}, et {owner} la détient",
  "rule.others-tag.permit.help": "{owner} la rend, ou la transmet d’abord",
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
  "rule.open-neutral": "{name} est alimenté alors que son neutre est ouvert : ses deux jambes s’écartent",
  "rule.open-neutral.help":
    "rabouter le neutre et vérifier les deux jambes avant de raccorder qui que ce soit",
  "rule.open-neutral.parted":
    "le neutre de {name} est coupé en charge : il portait {amps} A, et {volts} V se tient à l’ouverture",
  "rule.open-neutral.parted.help":
    "enlever la charge d’abord ; le neutre est le dernier coupé et le premier raccordé",
  "rule.regulator-neutral":
    "{by} contourne {name} hors de la position neutre sur {phases} : {amps} A tourne par son enroulement série",
  "rule.regulator-neutral.help":
    "le mener à la position neutre sur chaque phase et l’y bloquer avant de le contourner",
  "rule.regulator-neutral.unblocked":
    "{by} contourne {name}, qui est à la position neutre sans y être bloqué : sa commande peut l’en sortir",
  "rule.regulator-neutral.unblocked.help": "couper sa commande et le bloquer à la position neutre d’abord",
  "rule.volts-first":
    "{name} remet le client sur {bank}, qui a été remplacé et dont personne n’a relevé la tension",
  "rule.volts-first.dead":
    "{name} a été refermé alors que {bank}, qui a été remplacé, était encore hors tension : le client reçoit sa tension avant que personne l’ait relevée",
  "rule.volts-first.never":
    "{bank} a été remplacé, des clients y sont raccordés, et personne n’en a relevé la tension",
  "rule.volts-first.help":
    "vérifiez la tension à {at}, entre les fils et au neutre, avant de remettre le client",
  "rule.phase-check.untested":
    "{name} ferme un chemin parallèle dont personne n’a vérifié la concordance de phase et la tension",
  "rule.phase-check.untested.help":
    "vérifier la tension à {from} et à {to}, phase à phase, juste avant de fermer",
  "rule.capacitor-discharge.closed": "{name} remet la ligne sur {bank} qui garde {volts} V",
  "rule.capacitor-discharge.closed.help": "attendre encore {left} s avant de refermer",
  "rule.approach-distance.within":
    "à portée de bras de ce qu’on change et à nu : {hot}, {volts} V ; rester à {distance}",
  "rule.approach-distance.enclosure":
    "à portée de main dans la même enveloppe et à nu : {hot}, {volts} V ; couvrez-le ou restez à {distance}",
  "rule.work-not-safe.spike":
    "le travail commence sur le câble à {name}, et personne ne l'a identifié ni piqué",
  "rule.work-not-safe.spike.help":
    "vérifiez-le et mettez-le à la terre à ses extrémités, puis identifiez-le, ou piquez-le à distance : dans la fouille, un détecteur ne touche rien",
  "rule.work-not-safe.cut":
    "le câble est coupé à {name}, et sa partie {part} n'a pas de mise à la terre à elle au-delà",
  "rule.work-not-safe.cut.help":
    "vérifiez et mettez à la terre l'autre extrémité de {part} aussi : une fois coupé, on a les deux parties en main",
  "rule.work-not-safe.looseEnd": "{name} est rompu, et son bout à {where} n’a pas de mise à la terre à lui",
  "rule.work-not-safe.looseEnd.help":
    "vérifier et mettre à la terre {where} aussi : les deux bouts viennent dans la main",
  "rule.work-not-safe.takenAway":
    "{name} est déposé, et {where}, qui reste, n’est à la terre que par lui ou pas du tout",
  "rule.work-not-safe.takenAway.help": "mettez aussi {where} à la terre, ou posez un pont avant de déposer",
  "rule.not-repaired": "{name} met {thing} sous tension avant que les travaux y soient faits",
  "rule.not-repaired.help": "faire d’abord les travaux, ou isoler cette partie aux deux bouts",
  "rule.tagged-operated": "on manœuvre {name} ({verb}) alors que son étiquette y est",
  "rule.tagged-operated.help":
    "une étiquette ne s'ôte que lorsque ceux qu'elle protège sont dégagés et l'ont rendue : ôtez-la d'abord de {name}",
  "rule.detector-check.before": "le détecteur n'est pas éprouvé juste avant cette vérification",
  "rule.detector-check.after":
    "le détecteur n'est pas éprouvé de nouveau après la vérification, avant : {verb}",
  "rule.detector-check.end": "le détecteur n'est pas éprouvé de nouveau après la dernière vérification",
  "rule.detector-check.help":
    "éprouvez le détecteur sur une source connue sous tension ou sur son testeur, juste avant la vérification et juste après",
  "rule.test-before-ground":
    "{set} met à la terre {where}, non vérifié hors tension à cet endroit depuis la dernière manœuvre",
  "rule.test-before-ground.help": "vérifiez {where} entre la dernière manœuvre et cette étape",
  "rule.test-live": "la vérification a montré {volts} V à {where}, et la suite est : {verb}",
  "rule.test-live.none": "la vérification ne montre aucune tension en {where}, qui devait être sous tension",
  "rule.test-live.none.help": "s’arrêter et chercher ce qui est encore ouvert avant de fermer autre chose",
  "rule.test-live.help":
    "arrêtez : regardez, interrogez l'exploitant, trouvez ce qui l'alimente, et refaites la réunion",
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
  "rule.ground-order.on": "le côté phase de {set} se pose avant son côté neutre ou terre",
  "rule.ground-order.on.help": "posez d'abord le côté neutre ou terre, puis le côté phase à la perche",
  "rule.ground-order.off": "le côté neutre ou terre de {set} part avant son côté phase",
  "rule.ground-order.off.help": "ôtez d'abord le côté phase à la perche, puis le côté neutre ou terre",
  "rule.ground-rating":
    "{set} porterait {amps} A pendant {seconds} s à X/R {xOverR} ; son câble {cable} tient {withstand} A",
  "rule.ground-rating.help":
    "prenez un jeu plus gros ou deux en parallèle, ou faites raccourcir la durée d'élimination",
  "rule.ground-rating.unknown":
    "personne n’a dit quel câble a {set} : il est compté comme du cuivre No. 2, le moins permis",
  "rule.ground-rating.small": "le câble {cable} de {set} est plus petit que du cuivre No. 2",
  "rule.ground-rating.size.help":
    "prenez un jeu en cuivre No. 2 ou plus gros, prévu pour le courant de défaut à cet endroit",
  "rule.ground-place":
    "avec ces mises à la terre le travailleur ressentirait encore {exposure} V, plus que {limit} V : {threat}",
  "rule.ground-place.help": "une mise à la terre à {place} suffirait",
  "rule.ground-place.none":
    "aucune mise à la terre de plus ne suffit : ôtez une entrée, ou reliez le travailleur au poteau et au neutre",
  "rule.ground-return.rod": "{set} revient par un piquet seul",
  "rule.ground-return.rod.help":
    "mettez à la terre par le neutre à {at}, qui remonte à la source ; par un piquet seul aucun fusible ne voit le défaut",
  "rule.ground-return.open":
    "le neutre à {at} ne remonte à aucune source, donc {set} revient par les piquets seuls",
  "rule.ground-return.open.help": "trouvez où le neutre est ouvert, et mettez à la terre là où il est entier",
  "rule.secondary-backfeed": "on travaille sur {name} alors que {feeders} pourrait l'alimenter à l'envers",
  "rule.secondary-backfeed.help":
    "mettez le secondaire à la terre à {at}, ou retirez chaque compteur, ou ayez chaque disjoncteur principal ouvert, étiqueté et bloqué",
  "rule.capacitor-discharge":
    "{name} est sans alimentation depuis {seconds} s et tient encore {volts} V quand on y touche ({verb})",
  "rule.capacitor-discharge.help": "attendez encore {left} s, puis court-circuitez-le",
  "rule.capacitor-discharge.unshorted":
    "{name} n'a pas été court-circuité, donc ce qui y tient ne compte pas comme hors tension",
  "rule.capacitor-discharge.unshorted.help": "posez une mise à la terre sur chaque phase de {name}",
  "rule.open-phase-backfeed":
    "{where} est tenu pour hors tension, et {name} le maintient à {volts} V par ses autres phases",
  "rule.open-phase-backfeed.help": "ouvrez chaque phase qui alimente {name}, puis vérifiez",
  "rule.ferroresonance":
    "{name} manœuvre un pôle à la fois de {bank}, dont le primaire n'est pas à la terre, par le câble {cable} avec {percent} % de charge : sa tension peut s'emballer",
  "rule.ferroresonance.grounded":
    "{name} manœuvre un pôle à la fois de {bank} par le câble {cable} avec {percent} % de charge : son étoile à la terre s'emballe rarement, mais n'en protège pas à coup sûr",
  "rule.ferroresonance.help":
    "manœuvrez les trois phases ensemble, ou aux bornes mêmes du banc, ou laissez-y quelques pour cent de charge résistive",
  "rule.approach-distance":
    "encore sous tension à portée du travail : {hot}, {volts} V ; gardez {distance} ou couvrez-le",
  "rule.approach-distance.pole":
    "encore sous tension sur le même poteau : {hot}, {volts} V ; le dessin ne donne pas de distance, gardez donc {distance}",
  "rule.approach-distance.ungrounded":
    "à portée du travail et sans mise à la terre, donc réputé sous tension : {hot}, {volts} V ; mettez-le aussi à la terre, gardez {distance} ou couvrez-le",
  "rule.approach-distance.nearby": "{name} pend à {spacing} m de la ligne, moins que {distance}",
  "rule.approach-distance.help": "couvrez {hot}, ou tenez-vous à l'écart et portez {gloves}",
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
  "rule.onto-fault": "{name} ferme sur {things}, qui n’est pas réparé",
  "rule.onto-fault.help":
    "réparer d’abord {things}, ou l’isoler aux deux bouts et remettre le reste sous tension",
  "rule.customers-machine": "l’équipe démarre {name}, qui est à un client",
  "rule.customers-machine.help": "la laisser arrêtée ; son propriétaire la démarre quand la ligne est rendue",
  "rule.guard-first": "{name} est à terre, et personne n’en éloigne les gens",
  "rule.guard-first.help":
    "le baliser à ses poteaux avant toute manœuvre, et le tenir pour être sous tension",
  "rule.single-phasing":
    "{name} se ferme avec {motor} en service, pôle par pôle, là où un fusible avait fondu",
  "rule.single-phasing.help":
    "faire arrêter le moteur à son disjoncteur jusqu’au retour de toutes ses phases",
  "rule.phase-missing": "{name} est laissé sans {phases}",
  "rule.phase-missing.closed":
    "{name} met un client sur {bank}, à qui il manque {phases} : un moteur y brûle",
  "rule.phase-missing.help": "fermer la phase qui manque, ou ouvrir les autres",
  "rule.cause-first": "{name} est refermé, et personne n’a cherché ce qui a fait fondre son fusible",
  "rule.cause-first.tripped":
    "{name} a été trouvé ouvert et a pu déclencher, et on le ferme sans que personne ait parcouru la ligne au-delà",
  "rule.cause-first.tripped.help":
    "parcourir d’abord ce qui est au-delà, et regarder chaque poteau ; s’il a été ouvert exprès, trouver par qui",
  "rule.cause-first.help": "parcourir d’abord ce qui est au-delà, et regarder chaque poteau",
  "rule.grounds-left": "{name} est fermé alors que {sets} est encore sur ce qu'il met sous tension",
  "rule.grounds-left.help": "ôtez d'abord {sets}, tous dégagés",
  "rule.clear-before-ungrounding": "{set} part alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.clear-before-ungrounding.help":
    "obtenez le dégagement de chacun par son nom avant que la terre ne parte",
  "rule.all-clear-first":
    "{name} met la ligne sous tension sans dégagement après le dernier travail et la dernière terre",
  "rule.all-clear-first.unrepeated":
    "{name} met la ligne sous tension avant que le dégagement ait été répété",
  "rule.all-clear-first.help":
    "obtenez le dégagement de chacun par son nom, et répétez-le, une fois la dernière terre partie",
  "rule.tags-left": "{name} met la section sous tension alors que l'étiquette de {tagged} y est encore",
  "rule.tags-left.help": "ôtez d'abord l'étiquette de {tagged}, une fois rendue par les siens",
  "rule.permit-release.held":
    "{name} met la section sous tension alors que son autorisation est encore détenue",
  "rule.permit-release.help": "rendez d'abord l'autorisation à l'exploitant",
  "rule.permit-release.word": "{name} met la section sous tension sans la parole de l'exploitant, et {why}",
  "rule.permit-release.word.help": "interrogez l'exploitant avant de fermer",
  "rule.release-order.people":
    "l'autorisation est rendue alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.people.help": "obtenez d'abord le dégagement de chacun",
  "rule.release-order.untag":
    "l'étiquette de {name} part alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.unblock": "{name} est débloqué alors qu'il y a encore du monde sur la ligne à {where}",
  "rule.release-order.grounds": "l'autorisation est rendue alors que {sets} est encore posé",
  "rule.release-order.grounds.help": "ôtez d'abord {sets}",
  "rule.release-order.none": "il n'y a pas d'autorisation à rendre",
  "rule.release-order.tag": "l'étiquette de {name} part avant que l'autorisation soit rendue",
  "rule.release-order.tag.help": "rendez d'abord l'autorisation, puis ôtez les étiquettes",
  "rule.stand-clear": "{name} est fermé sans que l'on s'écarte de son tube",
  "rule.stand-clear.help": "tenez-vous hors du souffle et détournez le regard, puis fermez",
  "rule.pick-up-order": "{name} se pose avec {amps} A en aval ; une pince peut établir ou couper {limit} A",
  "rule.pick-up-order.bank":
    "{name} met {bank} sous tension par ses mâchoires, qui font l’appel de courant du banc",
  "rule.pick-up-order.meter": "{name} se remet avec {amps} A en aval : ses mâchoires établissent la charge",
  "rule.pick-up-order.meter.help": "faites couper le disjoncteur principal du client avant de le remettre",
  "rule.pick-up-order.meter.main": "ouvrez d'abord {main} ; il reprend la charge ensuite",
  "rule.pick-up-order.join":
    "{name} est refait avec {amps} A en aval : un connecteur tenu en main établit la charge",
  "rule.pick-up-order.join.help":
    "ouvrez d'abord ce qui est en aval ; c'est lui qui reprend la charge ensuite",
  "rule.pick-up-order.help":
    "ouvrez le coupe-circuit en aval, posez la pince, puis laissez le coupe-circuit reprendre la charge",
  "rule.close-rating": "{name} est fermé sur {amps} A et peut porter {limit} A",
  "rule.close-rating.help": "ôtez de la charge, ou prenez ce qui est prévu pour la porter",
  "rule.fuse-on-close.inrush":
    "le fusible {link} de {name} reçoit {amps} A d'enclenchement pendant {seconds} s et peut fondre à {melts} A",
  "rule.fuse-on-close.inrush.help":
    "mettez les transformateurs sous tension par parties, ou montez un fusible plus gros ou plus lent",
  "rule.fuse-on-close.cold-load":
    "le fusible {link} de {name} reçoit environ {amps} A de charge froide et peut fondre à {melts} A",
  "rule.fuse-on-close.cold-load.help": "reprenez la charge par parties",
  "rule.fuse-on-close.fault":
    "fermer sur le défaut envoie {amps} A dans le fusible {link} de {name}, qui fond en {seconds} s",
  "rule.fuse-on-close.fault.fast":
    "la fermeture sur le défaut envoie {amps} A dans le fusible {link} de {name}, qui fond en moins d'une demi-période",
  "rule.fuse-on-close.fault.help": "trouvez et éliminez le défaut avant de fermer",
  "rule.phase-check": "{name} joint sur {letter} deux sources écartées de {degrees}° et de {volts} V",
  "rule.phase-check.help":
    "comparez d'abord les phases de part et d'autre avec un comparateur ; trouvez laquelle est laquelle avant de fermer",
  "rule.phase-check.notInStep":
    "{name} joint {one} et {other}, que rien ne tient en synchronisme : jusqu’à {volts} V peuvent se tenir à l’ouverture",
  "rule.phase-check.notInStep.help": "retirez d’abord l’une des deux, puis fermez : avec une coupure",
  "rule.repeat-back": "la consigne de l'étape {n} est exécutée avant d'être répétée",
  "rule.repeat-back.help": "répétez d'abord la consigne à qui l'a donnée, et entendez qu'elle est exacte",
  "rule.jumper-order.on":
    "{name} se raccorde d'abord du côté sous tension, donc l'autre bout pend sous tension dans la main",
  "rule.jumper-order.on.help": "raccordez d'abord le côté hors tension, puis le côté sous tension",
  "rule.jumper-order.off":
    "{name} se détache d'abord du côté hors tension, donc son bout libre reste sous tension",
  "rule.jumper-order.off.help": "détachez d'abord le côté sous tension",
  "rule.step-not-possible.help": "regardez ce qu'il y a sur le poteau, et corrigez l'ordre des étapes",
  "rule.left-behind": "laissé à la fin : {what}",
  "rule.left-behind.underWay": "encore là pendant que le travail continue : {what}",
  "rule.left-behind.help":
    "retirez ce qui est à l'équipe et remettez chaque chose à sa position normale, ou ajoutez une note qui la nomme et dit pourquoi elle reste",
  "left.ground": "la mise à la terre {name}",
  "left.groundTaken": "{name}, trouvée posée, est retirée",
  "left.tag": "une étiquette sur {name}",
  "left.position": "{name} hors de sa position normale",
  "left.cover": "un protecteur à {name}",
  "left.permit": "l'autorisation, non rendue",
} as const;
