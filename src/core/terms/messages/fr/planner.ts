/** Pourquoi chaque étape d'un ordre proposé s'y trouve. */
export const planner = {
  "why.test.spike":
    "dans le câble, un détecteur ne touche rien : identifié et piqué, c'est bien celui qui est mis à la terre à ses extrémités",
  "why.brief.switching": "pour que tous sachent ce qu’on manœuvre, dans quel ordre et pourquoi",
  "why.brief":
    "pour que tous connaissent le travail, les dangers, ce qui l'alimente et comment on le garde hors tension",
  "why.secure": "desserré ou en train de céder, cela pourrait tomber quand le poteau est secoué",
  "why.request-permit": "{why}",
  "why.receive-permit": "rien de la section ne se manœuvre avant que l'exploitant l'ait remise",
  "why.hand-over.permit":
    "{owner} détient l'autorisation de cette section : personne ne travaille sous celle d'un autre",
  "why.hand-over.back":
    "les étiquettes de {owner} y sont encore : l'autorisation retourne à qui l'a transmise",
  "why.confirm-permit": "répété, pour que les deux aient la même section en tête",
  "why.off": "à laisser ouvert tant qu'il y a du monde sur la ligne",
  "why.off.isolates": "le chemin de {source} au travail passe par {name}",
  "why.off.isolates.machine":
    "une génératrice que personne n'a dessinée pourrait se trouver à {source}, et alimenterait le travail par {name}",
  "why.off.noBypass":
    "aucune dérivation n'est dessinée autour de {regulator}, qui ne peut donc être retiré sans couper ce qu'il alimente : la ligne est coupée à {name}",
  "why.off.shows": "la coupure de {name} se voit, celle de {other} ne se voit pas",
  "why.off.drops": "la charge part à {name}, si bien qu'il ne reste rien à couper à {other}",
  "why.off.splits.clamp":
    "rien ne pend à {other} quand on l'ôte ni quand on la remet : c'est {name} qui reprend ensuite la charge, et non des mâchoires",
  "why.off.splits": "se ferme après {other}, pour qu'aucun fusible ne reprenne tout d'un coup",
  "why.off.motor":
    "ce qui tourne là reste arrêté tant que toutes les phases ne sont pas revenues par {other}",
  "why.off.capacitor":
    "les mises à la terre de ce chantier ne court-circuitent pas {name}, donc on le retire",
  "why.bypass.neutral": "hors du neutre, {name} serait un court-circuit par son contournement",
  "why.neutral.beside": "hors du neutre, {name} serait un court-circuit par ce que {by} ferme à côté",
  "why.bypass.block": "commande coupée, {name} reste au neutre tant qu'il est contourné",
  "why.bypass.close": "la ligne contourne {name} par {by}, et personne n'est privé d'alimentation",
  "why.bypass.open": "la ligne repasse par {name} ; le contournement ne coupe rien",
  "why.bypass.unblock": "la commande est remise, et suit de nouveau la tension",
  "why.block": "mis hors d'état de manœuvre, pour qu'une mauvaise main ne suffise pas",
  "why.block.automatic": "peut se fermer seul ou à distance, quelle que soit l'étiquette",
  "why.block.clamp": "une pince levée qui revient remettrait la ligne sous tension",
  "why.tag": "personne ne ferme {name} tant qu'il y a du monde sur la ligne",
  "why.tag.thrown":
    "il bascule entre deux alimentations : personne ne le bascule tant qu'il y a du monde sur la ligne",
  "why.tag.found": "déjà ouvert, et parmi ce qui garde le travail hors tension",
  "why.wait":
    "un condensateur garde une charge après avoir perdu son alimentation ; on lui laisse {minutes} minutes à la montre",
  "why.check-detector.before": "un détecteur cassé ne montre rien, tout comme une ligne hors tension",
  "why.check-detector.after": "il montre encore une tension, donc on peut croire ce qu'il a montré",
  "why.test": "seule une vérification montre l'absence de tension",
  "why.test.dark":
    "sans tension depuis avant l’arrivée de l’équipe : un client peut y être en marche quand {name} se pose",
  "why.test.motor":
    "il manquait une phase à ce qui tourne derrière {name} : chaque phase est vérifiée avant la remise en marche",
  "why.test.changed": "{name} : après le remplacement, la tension est relevée avant que quiconque s’y fie",
  "why.test.phasing":
    "un chemin parallèle se ferme à {name} : la tension à {at} est vérifiée d'abord, phase à phase",
  "why.retest": "avec les mises à la terre, ce qu'un voisin induisait a disparu et se montre hors tension",
  "why.ground.work":
    "quoi qu'on ferme ou démarre par erreur, les mains à {at} restent au potentiel du poteau",
  "why.ground.work.station":
    "quoi qu'on ferme ou démarre par erreur, les mains à {at} restent au potentiel de la prise de terre du poste",
  "why.ground.work.enclosure":
    "quoi qu'on ferme ou démarre par erreur, les mains à {at} restent au potentiel de l'armoire et de ses piquets",
  "why.ground.secondary":
    "tout ce que font tourner les clients pourrait alimenter {name} à l'envers ; un jeu à {at} les tient tous",
  "why.ground.secondary.meters":
    "les génératrices des clients pourraient alimenter {name} à l'envers ; un jeu à {at} les tient toutes, et évite de retirer {meters} compteurs",
  "why.ground.secondary.meter":
    "la génératrice d'un client pourrait alimenter {name} à l'envers ; un jeu à {at} la tient, et évite de retirer le compteur",
  "why.barricade":
    "une erreur porterait en tension le poteau, le camion et les piquets à {at} ; personne ne se tient à côté",
  "why.barricade.enclosure":
    "une erreur porterait en tension l'armoire et le sol autour à {at} ; personne ne se tient à côté",
  "why.ask.hold":
    "{name} croise le travail ou est porté par les mêmes poteaux : réenclenchement bloqué, un fil qui le touche n'est pas remis sous tension plusieurs fois",
  "why.cover": "sous tension à portée du travail : {name}",
  "why.work": "coupé de toute source, étiqueté, vérifié et mis à la terre",
  "why.all-clear.work": "tous sont descendus de la ligne avant qu'une mise à la terre soit retirée",
  "why.uncover": "laissé comme on l'a trouvé",
  "why.unground":
    "côté ligne d'abord : le côté terre la tient hors tension jusqu'à ce que la perche soit dégagée",
  "why.all-clear.grounds":
    "sans les mises à la terre la ligne compte comme sous tension, et personne ne peut y être",
  "why.confirm.all-clear": "répété nom par nom, pour que personne ne manque",
  "why.release-permit": "monde dégagé et terres retirées : l'exploitant peut reprendre la section",
  "why.release-permit.switching": "tout est manœuvré : l’exploitant reprend la section telle qu’on la laisse",
  "why.untag": "plus personne n'est sur la ligne ; l'étiquette part avant qu'on manœuvre {name}",
  "why.untag.stays": "plus personne n'est sur la ligne ; la position reste, sans l'étiquette de l'équipe",
  "why.unblock": "plus personne n'est sur la ligne ; {name} ne se manœuvre qu'ainsi",
  "why.unblock.stays": "laissé comme on l'a trouvé",
  "why.unblock.close": "trouvé bloqué, ne se ferme que débloqué",
  "why.barricade.down": "un fil est à terre à {at} : plus personne ne s'en approche",
  "why.replace-barrel": "le tube retourne dans sa charnière avant de pouvoir être fermé",
  "why.refuse": "un fusible neuf, maintenant que la cause de la fusion est cherchée, et coupée ou réparée",
  "why.inspect.tripped":
    "{name} a été trouvé ouvert et a pu déclencher : on parcourt la ligne au-delà avant de le fermer",
  "why.inspect.set":
    "{set} : trouvée en place ; {name} ne se ferme pas jusqu’à ce que celui qui l’a posée la retire",
  "why.inspect.blown":
    "on cherche sur la ligne en aval ce qui a fait fondre le fusible de {name} avant d'en mettre un neuf",
  "why.refuse.looked": "un fusible neuf, maintenant qu'on a cherché ce qui a fait fondre l'autre",
  "why.supply": "alimente ce qui peut l'être pendant le travail",
  "why.ring":
    "une seule source alimente ses deux côtés : fermé avant toute ouverture, pour que personne ne soit coupé entre-temps",
  "why.supply.way": "ce qu’on ferme ensuite s’alimente par là",
  "why.off.leave": "le travail le laisse ouvert",
  "why.off.ring": "ouvert en service ; le chemin habituel alimente de nouveau tout le monde",
  "why.off.normal": "ouvert en service ; s'ouvre avant que deux alimentations se rejoignent",
  "why.off.again": "la charge part ici, si bien que la manœuvre suivante ne coupe ni ne reprend rien",
  "why.stop.first":
    "coupée du poste, elle continuerait seule ; son propriétaire l’arrête avant que la ligne s’ouvre",
  "why.stop.machine": "tourne seule, et rejoindrait la ligne hors de phase",
  "why.on.leave": "le travail le laisse fermé",
  "why.on.service": "trouvé ouvert ; fermé en service",
  "why.on.new": "mis en place ouvert par le travail ; fermé en service",
  "why.stand-clear": "si le fusible fond, les gaz de {name} sortent là où quelqu'un pourrait regarder",
  "why.on": "fermé pendant que rien ne l'alimente",
  "why.on.live": "l'alimentation revient par {name} à ce qui est en aval",
  "why.on.joined": "fermé en service ; ce qui est en aval est déjà alimenté",
  "why.on.capacitor": "revient sur la ligne en dernier, la tension revenue",
  "why.on.clamp": "tout l'aval de {name} est ouvert, si bien qu'aucune charge n'est reprise",
  "plan.alternative.openings": "ouvrir {names} au lieu de {others}",
  "plan.alternative.fewer": "laisser {others} fermé",
  "plan.alternative.more": "ouvrir aussi {names}",
  "plan.alternative.holdOpen":
    "s’en tenir à ce qui est ouvert de toute façon, au lieu d’une mise à la terre à {place}",
  "plan.alternative.hold": "ouvrir {names} au lieu d'une mise à la terre à {place}",
  "plan.control.opens":
    "rien ne s'ouvre sur le chemin depuis {source} : dessinez-y un interrupteur, un coupe-circuit, une pince ou une bretelle, ou mettez {source} hors tension de son côté",
  "plan.control.opens.terminal":
    "ce qui est changé a une borne à {where}, et rien ne s'ouvre sur le chemin depuis {source} : dessinez en amont une pince, un interrupteur ou un coupe-circuit, ou mettez {source} hors tension de son côté",
  "plan.control.breaks":
    "rien sous la main ne peut couper le courant de {name} : il faut un outil de coupure ou un appareil fait pour cela, ou un moyen d'en ôter la charge",
  "plan.control.ground":
    "une mise à la terre à {at} avec un neutre entier le tiendrait ; sans elle, tout ce qui peut démarrer doit être ouvert, étiqueté et bloqué",
  "plan.control.gap":
    "aucune coupure visible ne le sépare : un sectionneur, un coupe-circuit ou une pince en série avec {name} le ferait",
  "plan.control.cable":
    "aucun câble de la table ne porte {amps} A à {at} : des jeux en parallèle, ou l'alimentation coupée",
  "plan.control.neutral": "les mises à la terre demandent à {at} un neutre qui remonte à la source",
} as const;
