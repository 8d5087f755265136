/** Ce que la ligne de commande dit d'elle-même et des fichiers qu'elle ne peut employer. */
export const cli = {
  "cli.overview": `stillhot {version} : dessiner un petit réseau de distribution, ouvrir et fermer, et trouver, phase par phase,
ce qui pourrait encore être sous tension au point de travail.

  stillhot <commande> FICHIER… [--json]

{commands}

stillhot <commande> --help parle de l'une d'elles. Un FICHIER - est l'entrée standard. --language fr répond en
français ; sans lui vaut en, l'anglais. --region us le dit avec les mots anglais des États-Unis.

Code de sortie  0  fait, rien de mauvais trouvé
                1  fait, avec des constats : un point de travail qui n'est pas à la terre, ou plus qu'une remarque
                2  un fichier inutilisable, ou une ligne incompréhensible ; la raison est sur l'erreur standard

Essayez         stillhot check quarry-lane.stillhot.json
                stillhot draw quarry-lane.stillhot.json -o quarry-lane.svg
                stillhot check *.stillhot.json --json

{caution}
`,
  "cli.filesAndCodes": `Un FICHIER - est l'entrée standard. De plusieurs fichiers, celui qui est inutilisable est signalé sur l'erreur
standard et les autres ont leur réponse. Avec --json chaque fichier donne un objet JSON sur sa ligne.
--language fr met chaque phrase en français, --region us en anglais des États-Unis ; noms des règles, clés et
codes restent tels quels.

Code de sortie 0 : fait, rien de mauvais trouvé. 1 : fait, avec des constats. 2 : un fichier inutilisable, ou une
ligne incompréhensible.`,
  "cli.seeHelp": "Voir stillhot {command} --help",

  "cli.import.summary": "Faire un dessin du modèle d'un distributeur (CIM) ou d'une carte (GeoJSON)",
  "cli.import.help": `
Tous les fichiers de la ligne sont un seul modèle. Se lisent CIM IEC 61970/61968 en RDF/XML (modèles complets, CIM15
ou plus récent) et GeoJSON selon la convention de docs/import.md. Tout ce qui est supposé, laissé de côté ou dessiné
moins exactement est nommé, compté et dit avec sa raison ; identifiants et noms restent.

  --neutral WAY   ce qui est dessiné pour un neutre que les impédances du modèle contiennent déjà :
                    return  un conducteur presque sans impédance, piquets supposés (par défaut)
                    earth   rien, tout neutre est une terre parfaite : redonne tensions et courants publiés
                    wires   un conducteur à lui où le fichier a les conducteurs, sinon comme return
                    given   les neutres, piquets et compteurs du fichier et aucun autre (par défaut pour un
                            modèle que stillhot export a écrit)
  --hertz HERTZ   50 ou 60, où le fichier ne le dit pas
  --units UNITS   plain (volts, watts) ou kilo (kilovolts, mégawatts), où le fichier ne le dit pas
  --places WAY    tidy (par défaut) : où les symboles seraient les uns sur les autres sur le plan, un schéma unifilaire
                    sur les côtés du plan ; map : les emplacements du fichier, en mètres
  --since OLD     un dessin d'un fichier plus ancien du même modèle : ce qui est nouveau, disparu et changé est dit
  --around NAME   seulement le morceau autour d'un endroit, comme stillhot cut (avec --openings N)

Avec --json : { file, ok, counts, assumed, leftOut, approximated, warnings, drawing }, chaque entrée avec what, count,
why et names. Un fichier illisible donne { file, ok, errors } sur l'erreur standard et le code 2.
`,
  "cli.import.oneMap": "une carte est un seul fichier ; attendu aucun autre à côté",
  "cli.import.noWay": "--neutral {way} : attendu l'un de {known}",
  "cli.export.noForm": "--as {form} : attendu l'un de {known}",
  "cli.import.noHertz": "--hertz {hertz} : attendu 50 ou 60",
  "cli.import.noUnits": "--units {units} : attendu plain ou kilo",
  "cli.import.noPlaces": "--places {way} : attendu tidy ou map",
  "cli.import.done": "{file} : {points} points, {elements} éléments",
  "cli.import.since": "Autrement que dans {since}, identifiants des dessins, changements à la main compris :",
  "cli.import.sinceNothing": "Rien n'est autrement que dans {since}.",
  "cli.import.since.added": "nouveau, {count} : {ids}",
  "cli.import.since.gone": "disparu, {count} : {ids}",
  "cli.import.since.changed": "changé, {count} : {ids}",
  "cli.import.assumed": "Supposé, car le fichier ne le dit pas :",
  "cli.import.leftOut": "Laissé de côté :",
  "cli.import.approximated": "Dessiné moins exactement :",
  "cli.import.warnings": "À savoir :",
  "cli.import.entry": "{count} × {what} : {why}",
  "cli.import.entryOf": "{count} × {what} : {why} ({names})",

  "cli.generate.summary": "Imprimer un dessin d'exercice, fait d'un niveau et d'une graine",
  "cli.generate.help": `
Le dessin est un petit réseau inventé avec son travail, qui pourrait tenir sur des poteaux : une ligne avec ses
appareils, ses transformateurs et ses clients et, de niveau en niveau, plus de ce qui réalimente, boucle, induit
ou garde une charge. Il n'a pas de positions : le programme le dispose. Même niveau, même graine et même version
donnent le même fichier pour toujours ; deux graines qui se suivent n'ont pas la même forme.

  --level 1…6   1 un transformateur et son coupe-circuit · 2 une dérivation avec la machine d'un client ou un
                secondaire partagé · 3 trois phases avec un bouclage, un banc de transformateurs, une boucle de
                câble ou un condensateur · 4 deux de ceux-ci · 5 trois · 6 cinq
  --seed N      un nombre entier de 0 à 4294967295
  --version V   la façon de dessiner (1) ; la plus récente si rien n'est dit
  -o OUT        l'écrire dans un fichier, ou dans un dossier existant sous tap-LEVEL-SEED.stillhot.json

Avec --language fr les noms sont français ; tout le reste est pareil.
Avec --json : { level, seed, version, drawing }, ou { level, seed, version, out } avec -o.

  stillhot generate --level 3 --seed 7 | stillhot check -
`,
  "cli.variant.summary":
    "Faire des variantes d'un scénario par numéro ou par nom, une par personne d'une classe",
  "cli.variant.help": `
Le même scénario avec d'autres noms, numéros et phases, et les adresses dans un autre ordre : ce qui est caché se
trouve ailleurs ; dans certaines variantes de certains scénarios, rien n'est caché. Ce qu'il y a à faire, ce qui
compte et pour combien ne change pas. Mêmes fichier et numéro, mêmes octets, pour toujours.

  --number N    la première variante, de 1 à 9999 (1)
  --count N     combien, à partir de ce numéro (1) ; plus d'une demande un dossier
  --name QUI    la variante d'un nom, à la place d'un numéro
  -o OUT        l'écrire dans un fichier, ou dans un dossier existant sous NOM-NUMERO.stillhot.json

Avec --json, une ligne chacune : { number, title, scenario }, ou { number, title, out } avec -o.

  stillhot variant shared/scenarios/lindens.stillhot.json --count 12 -o classe
`,
  "cli.variant.oneFile": "variant prend un seul FICHIER",
  "cli.variant.noScenario": "{file} : ne contient aucun scénario",
  "cli.variant.needsFolder": "plus d'une variante demande -o et un dossier existant",
  "cli.variant.either": "--name ne va ni avec --number ni avec --count",
  "cli.variant.noName": "--name {name} : il faut une lettre ou un chiffre",
  "cli.variant.tooHigh": "le dernier numéro dépasserait {most}",
  "cli.package.summary": "Faire d'un scénario une leçon (SCORM) pour un système de formation",
  "cli.package.help": `
Un zip de fichiers qu'un système de formation dépose et montre dans un cadre : l'application, le scénario, le
manifeste. Il parle à l'interface du système dans le cadre autour de lui, et ne demande rien ailleurs. Le système
apprend si c'est réussi, les points, la durée et les objectifs, et garde ce qui a été fait, pour qu'on puisse continuer.

  --scorm V     la version de la norme, 1.2 ou 2004 (2004)
  -o OUT        l'écrire dans un fichier, ou dans un dossier existant sous NOM.scorm-V.zip

Avec --json : { file, scorm, out, bytes }.

  stillhot package shared/scenarios/first-cutout.stillhot.json --scorm 1.2 -o lecon.zip
`,
  "cli.package.oneFile": "package prend un seul FICHIER",
  "cli.package.needsOut": "package demande -o et un fichier ou un dossier",
  "cli.package.noVersion": "--scorm {version} : une des versions {known} était attendue",
  "cli.drill.summary":
    "Imprimer une feuille de questions, ou son corrigé, sur des dessins faits ou les vôtres",
  "cli.drill.help": `
Des questions de deux minutes, avec les réponses du moteur : ce qui est sous tension sur le dessin, ce qui
remettrait sous tension si une seule chose va mal, ce que montrera le détecteur, si un outil peut ouvrir un
appareil, où poser la mise à la terre, des étapes à mettre en ordre, la faute dans un ordre, et quoi aller voir
d'abord. Sans FICHIER les dessins sont faits comme par generate ; mêmes niveau, graine et nombre, même feuille.

  --level 1…6   des dessins qui sont faits (nécessaire sans FICHIER)
  --seed N      un nombre entier (1)
  --count N     combien de questions, de 1 à 100 (10)
  --key         les réponses et leurs raisons, à la place des questions
  -o OUT        l'écrire dans un fichier, ou dans un dossier existant sous drill-LEVEL-SEED.html

La page est en HTML, noir et blanc, à imprimer ; elle n'a besoin de rien d'autre.
Avec --json : { level, seed, count, questions }, chaque question avec kind, text, options, answer, why et drawing.

  stillhot drill --level 2 --seed 7 --count 6 -o feuille.html --language fr
`,
  "cli.drill.none":
    "Ces dessins ne donnent aucune question : un travail avec un point de travail planifiable en donne le plus.",
  "cli.drill.fewer": "Les dessins ont donné {count} questions, et non {asked}.",
  "cli.drill.made": "niveau {level}, graine {seed}",
  "cli.drill.madeOf": "{files}, graine {seed}",
  "cli.drill.wrote": "{count} questions : écrites dans {out}",

  "cli.flagNeeded": "{flag} est nécessaire : un nombre entier de {from} à {to}",
  "cli.noWholeNumber": "{flag} {found} : un nombre entier de {from} à {to} était attendu",

  "cli.progress": "{n} sur {count} : {file}",
  "cli.progress.read": "{file} : {percent} % lus",
  "cli.progress.make": "{file} : le dessin se fait",
  "cli.progress.cut": "{file} : le morceau est découpé",
  "cli.export.summary": "Écrire un dessin pour d'autres programmes : une carte (GeoJSON) ou un modèle (CIM)",
  "cli.export.help": `
Une carte est une FeatureCollection de la RFC 7946 dans la convention de docs/import.md, un modèle est du RDF/XML des normes
CEI 61970 et 61968. stillhot import relit les deux : les mêmes états et les mêmes tensions reviennent. Ce qu'ils ne portent
pas, comme le travail, un scénario ou les noms des supports, est dit sur l'erreur standard, compté, avec sa raison. Un dessin
ne sait pas où il est sur terre : les emplacements d'une carte sont des mètres autour de 0°, 0°, ceux d'un modèle des mètres
à plat.

  --as FORM       map (carte) ou cim (modèle) ; sinon d'après la fin de OUT (.xml : cim), sinon une carte
  -o OUT          écrire dans un fichier, ou sous le même nom dans un dossier existant ; sinon sur la sortie standard

Avec --json : { file, ok, leftOut, approximated, map } (ou cim, un texte), ou out à sa place.
`,
  "cli.cut.summary": "Découper d'un grand dessin ce qu'il faut pour un travail",
  "cli.cut.help": `
Tout ce qui est à quelques points d'ouverture de l'endroit, et tout ce qui pourrait l'alimenter par trois incidents au
plus : liaisons, machines, clients, tout ce qui est hors tension sur le dessin. Ce qui est au-delà, alimenté, et ne tient
qu'à un point est remplacé par une source équivalente : tensions et impédances de tous les conducteurs vues de là, charges
comme dessinées et coupées. Le morceau est comparé au tout : verdict, marge, menaces, tensions et exposition à l'endroit
sont les mêmes à 0,1 % près, sinon davantage est gardé.

  --around NAME   l'endroit : un nom comme on le dit, ou l'identifiant d'un support, d'un point ou d'un appareil
  --openings N    garder tout ce qui est à tant d'appareils qui s'ouvrent (2)
  -o OUT          écrire dans un fichier, ou sous le même nom dans un dossier existant ; sinon sur la sortie standard

Ce qui est retranché, pourquoi cela ne peut pas compter et quand cela peut compter est dit sur l'erreur standard. Avec
--json : { file, ok, openings, parts, compared, workPointsLeft, stepsLeft, scenarioLeft, drawing }, ou out à la place de
drawing.
`,
  "cli.cut.needsAround": "aucun endroit n'est donné : --around NAME",
  "cli.cut.noOpenings": "--openings {openings} : attendu un nombre entier de 0 à 999",
  "cli.around.none":
    "rien ne s'appelle {name} ici : attendu le nom ou l'identifiant d'un support, d'un point ou d'un appareil",
  "cli.around.many":
    "{count} choses s'appellent {name} : {names}. Dites laquelle par plus de son nom, ou par son identifiant",
  "cli.around.manyMore":
    "{count} choses s'appellent {name} : {names} ; et {more} de plus. Dites laquelle par plus de son nom, ou par son identifiant",

  "cli.validate.summary": "Lire un fichier avec rigueur et dire ce qui n'y va pas",
  "cli.validate.help": `
Chaque erreur est nommée par son chemin dans le fichier, avec ce qui s'y trouve et ce qui était attendu.
Les clés que ce programme ne connaît pas sont gardées, nommées une fois, et donnent le code de sortie 1.

Avec --json : { file, ok, findings, errors }. Un fichier illisible donne le même objet sur l'erreur standard,
chaque erreur en { path, message } ; rien de lui ne va sur la sortie standard.
`,
  "cli.validate.read": "lu, {points} points et {elements} éléments",

  "cli.check.summary": "Trouver ce qui est sous tension tel que dessiné et ce qui pourrait l'être",
  "cli.check.help": `
Pour chaque point de travail du chantier :
  verdict    live, could-go-live, isolated (absence de tension non prouvée), ou grounded (et vérifié, tel que dessiné)
  marge      combien de choses indépendantes doivent mal tourner avant qu'il soit sous tension
  façons     chaque ensemble d'au plus trois choses qui le mettrait sous tension, avec le chemin depuis la source,
             et ce qu'un travailleur ressentirait avec les mises à la terre dessinées
Puis les états de tous les conducteurs (--all : chacun avec sa tension, avec et sans charges, et ses sources), et
ce qui ne va pas d'autre.

  --around NAME   d'un grand dessin, seulement ce qu'il faut aux points de travail d'un endroit, demandé au tout ;
                  --openings N, comme pour stillhot cut, dit combien en est montré
  --jobs N        N fichiers à la fois ; les réponses viennent dans l'ordre des fichiers

Les positions sont prises telles que dessinées. Une vérification des étapes compte quand elle est marquée faite.

Avec --json : { file, ok, conductors, elements, workPoints, findings }. ok est faux dès que le code de sortie n'est
pas 0. Un nombre qui n'a pu être calculé s'imprime 1.7976931348623157e+308, au-dessus de toute limite, avec un
constat "unsolved" à côté.

  stillhot check *.stillhot.json --json | jq -r 'select(.ok | not) | .file'
`,
  "cli.noWorkPoint":
    "Pas de point de travail dans ce fichier : ajoutez-en un sous job.workPoints pour demander ce qui pourrait le mettre sous tension.",
  "cli.ways": "Ce qui pourrait le mettre sous tension, toute terre temporaire levée : {count}",
  "cli.noJobs": "--jobs demande un nombre entier à partir de 1, pas {jobs}",
  "cli.lookFirst": "Regarder d'abord, car le dessin peut se tromper :",
  "cli.lookFirst.working": "Regarder d'abord, avant de se fier à l'ordre des étapes :",
  "cli.lookFirst.proposed":
    "Regarder d'abord, avant de se fier à un ordre des étapes tel que le proposerait la commande plan :",
  "cli.lookFirst.noOrder":
    "Ce qu'il faut regarder d'abord dépend de la façon de mettre le point de travail hors tension : ajoutez un ordre des étapes, comme le fait la commande plan, puis demandez de nouveau.",
  "cli.lookFirst.more": "et {count} de plus ; --all les liste",
  "cli.lookFirst.cut": "{count} choses plus loin n'ont pas été examinées : elles sont en doute aussi",
  "cli.moreWays": "et {count} de plus ; --all les liste",
  "cli.path": "chemin : {path}",
  "cli.noPath": "chemin : aucun, c'est induit",
  "cli.conductors": "Conducteurs tels que dessinés : {summary}.",
  "cli.conductorsAll": "Conducteurs tels que dessinés : {summary}. Volts à la terre, avec et sans charges :",
  "cli.noConductors": "Le dessin n'a pas de conducteurs.",
  "cli.notFinite": "volts ou ampères n'ont pu être calculés à {where} ; tenez tout là pour sous tension",

  "cli.rehearse.summary": "Jouer les étapes du chantier et trouver ce que chacune enfreint",
  "cli.rehearse.help": `
Joue job.steps de la première à la dernière, marquées faites ou non, depuis les positions dessinées. Chaque étape
est tenue contre chaque règle, et ce qu'elle entraîne est calculé sur le dessin résolu : ampères coupés, courant de
défaut, volts sur une personne, ce que montre le détecteur.

Avec --json : { file, ok, customers, steps, findings, final }. Chaque étape : { n, do, findings, consequence: { kind, amps, volts,
text }, workPoints } ; findings sont ceux de la fin ; final est ce que donne check, après la dernière étape. ok est
vrai quand aucune étape n'a donné danger ni avertissement ; le code de sortie est 0 quand rien à la fin n'en donne.
`,
  "cli.rehearse.noSteps": "Il n'y a pas d'étapes à jouer sous job.steps.",
  "cli.rehearse.final": "Après la dernière étape :",

  "cli.plan.summary": "Mettre dans le fichier un ordre complet d'étapes",
  "cli.plan.help": `
Trouve un ordre d'étapes, de l'état trouvé à la remise en service en passant par le travail, qui satisfait à chaque règle :
le moins de clients coupés pendant les travaux, puis au pire, puis le moins de manœuvres, puis le moins de marche. Les
étapes du fichier sont remplacées. Imprime le fichier avec les étapes dans job.steps sur la sortie standard, et ce que coûte l'ordre sur l'erreur standard.

  -o SORTIE   écrire le fichier dans SORTIE, ou comme NOM.stillhot.json dans un dossier qui existe, et imprimer l'ordre
              des étapes avec ses raisons

Où aucun ordre n'a été trouvé qui passe chaque règle, le code de sortie est 1, et ce qui n'a pas de parade est dit. Un
fichier sans point de travail ne se planifie pas.

Avec --json : { file, ok, steps, customersOut, criticalOut, operations, alternatives, uncontrolled, findings } ; chaque
étape porte sa raison dans why.

  stillhot plan tap.stillhot.json | stillhot rehearse -
`,
  "cli.plan.noWorkPoint":
    "il n'y a pas de point de travail à planifier, et rien n'est autrement qu'on doit le laisser : ajoutez-en un sous job.workPoints, ou dites sous job.leave comment on laisse les choses",
  "cli.plan.none": "Aucun ordre d'étapes n'a été trouvé qui passe chaque règle.",
  "cli.plan.broken": "{steps} étapes qui ne passent pas chaque règle : {cost}.",
  "cli.plan.order": "{steps} étapes : {cost}.",
  "cli.plan.cost":
    "clients sans alimentation : {asFound} au départ, {worst} au pire, {during} pendant les travaux, {end} à la fin ; manœuvres : {operations}",
  "cli.plan.costCritical":
    "clients sans alimentation : {asFound} au départ, {worst} au pire, {during} pendant les travaux, dont {critical}, {end} à la fin ; manœuvres : {operations}",
  "cli.plan.instead": "Ou bien : {summary} ({cost}).",
  "cli.plan.uncontrolled": "Sans parade à {where} : {threat}",
  "cli.plan.why": "{step} ({why})",

  "cli.draw.summary": "Imprimer le dessin en SVG",
  "cli.draw.help": `
L'image montre l'état de chaque conducteur tel que dessiné, par couleur, par motif de trait et par lettre.

  -o SORTIE       l'écrire dans un fichier, ou comme NOM.svg dans un dossier qui existe
  --palette NOM   sun (par défaut), night, ou paper (noir et blanc)

Avec --json : { file, ok, svg }, ou { file, ok, out } avec -o. Le code de sortie est 0 une fois l'image faite, quoi
qu'elle montre ; 1 quand le fichier a des clés que ce programme ne connaît pas.
`,
  "cli.draw.noPalette": "il n'y a pas de palette {name} ; il y a {known}",
  "cli.wrote": "{file} : écrit dans {out}",

  "cli.sheet.summary": "Imprimer la fiche de chantier en HTML",
  "cli.sheet.help": `
Une page à imprimer en Letter ou A4 : le verdict, le dessin tel qu'il est quand le travail commence, ce qui pourrait
encore le mettre sous tension et ce qui y pare, les cinq sujets de la réunion, les étapes avec leurs cases, ce que
personne n'a vu, noms et signatures, et un code qui ouvre le dessin. Elle ne demande rien d'autre : ni script, ni réseau.

  -o SORTIE     l'écrire dans un fichier, ou comme NOM.html dans un dossier qui existe
  --large       lettres plus grandes d'un tiers, une colonne d'étapes
  --drawn TEXTE quand le dessin a été changé la dernière fois, comme il doit figurer ; sinon un blanc à remplir
  --app URL     l'adresse de l'application, pour que l'appareil photo d'un téléphone ouvre le dessin ; sinon seul le
                lecteur de l'application lit le code

Avec --json : { file, ok, fingerprint, html }, ou { file, ok, fingerprint, out } avec -o. Le code de sortie est 0 une
fois la fiche faite, quoi qu'elle dise ; 1 quand le fichier a des clés que ce programme ne connaît pas.
`,
  "cli.sheet.noApp": "{app} n'est pas une adresse qui commence par http:// ou https://",

  "cli.serve.summary": "Servir l'application à cette machine seulement",
  "cli.serve.help": `
Imprime l'adresse et sert jusqu'à ce qu'on l'arrête (Ctrl+C). Rien ne quitte cette machine, et aucune autre ne peut
l'atteindre.

  --port N   le port à prendre (4173), ou le suivant qui est libre ; 0 prend n'importe lequel

Avec --json : { url, port }.`,
  "cli.serve.noApp":
    "Il n'y a pas d'application construite ici. Dans un clone, lancez npm start, ou d'abord npm run build.",
  "cli.serve.running": "Application servie à cette machine seulement ; Ctrl+C l'arrête.",
  "cli.serve.otherPort":
    "Le port {wanted} est pris, celui-ci est donc {port}. Les dessins sont gardés par adresse : ceux faits à {usual} ne sont pas ici. Ils y sont de nouveau dès que ce port est libre.",
  "cli.serve.noPort": "{port} n'est pas un port : c'est un nombre entier de 0 à 65535",

  "cli.noLanguage": "il n'y a pas de langue {language} ; il y a {known}",
  "cli.noRegion": "il n'y a pas de région {region} ; il y a {known}",
  "cli.regionOfEnglish":
    "--region {region} dit de quel anglais il s'agit, et --language {language} n'en est pas : ôtez l'un des deux",
  "cli.unknownRule": "aucune règle ne s'appelle {id} : la désactiver ne désactive rien",
  "cli.unknownRule.near":
    "aucune règle ne s'appelle {id} : la désactiver ne désactive rien ; vouliez-vous dire {near} ?",
  "cli.unknownRule.help": "écrivez l'identifiant de la règle comme dans les constats, ou ôtez cette entrée",
  "cli.fileForLanguage":
    "{language} est un fichier, et --language attend d'abord une langue, parmi {known} : --language {first} {language}",
  "cli.noCommand": "Il n'y a pas de commande {name} ; il y a {known}. Voir stillhot --help",
  "cli.fileForCommand": "{name} est un fichier ; dites qu'en faire : stillhot check {name}",
  "cli.unknownFlag": "{command} ne connaît pas {flag} ; il connaît {known}",
  "cli.flagTwice": "{flag} est donné deux fois",
  "cli.flagTakesNone": "{flag} ne prend pas de valeur",
  "cli.flagNeedsValue": "{flag} demande une valeur : {flag} {value}",
  "cli.needsFile": "aucun FICHIER n'a été donné, ni - pour l'entrée standard",
  "cli.takesNoFile": "elle ne prend pas de fichier, et {file} a été donné",
  "cli.emptyName": "l'un des fichiers a un nom vide",
  "cli.stdinTwice": "l'entrée standard, -, ne se lit qu'une fois",
  "cli.sameOut":
    "{first} et {second} iraient tous deux dans {out} ; écrivez-les un par un, ou dans deux dossiers",
  "cli.oneOut": "plusieurs fichiers ne tiennent pas dans un seul {out} ; nommez un dossier qui existe",

  "cli.stdin": "entrée standard",
  "cli.noSuchFile": "ce fichier n'existe pas",
  "cli.isFolder": "ceci est un dossier ; nommez les fichiers qu'il contient",
  "cli.mayNotRead": "vous n'avez pas le droit de lire ce fichier",
  "cli.notRead": "ce fichier n'a pu être lu : {why}",
  "cli.tooManyBytes": "ceci a plus de {most} Mo, plus qu'aucun dessin",
  "cli.utf16": "ceci est un texte UTF-16 ; enregistrez-le en UTF-8",
  "cli.notUtf8": "ceci n'est pas un texte UTF-8",
  "cli.oneProblem": "non employé, 1 problème",
  "cli.problems": "non employé, {count} problèmes",
  "cli.overDrawing": "{out} est un dessin, et ceci prendrait sa place : nommez un autre fichier après -o",
  "cli.throughLink": "{out} est un lien : nommez le fichier à écrire lui-même",
  "cli.notWritten": "{out} n'a pu être écrit : {why}",
  "cli.notDone": "{why}",
  "cli.ourMistake":
    "Stillhot a fait une erreur et ne donne pas de réponse ; signalez-la avec le fichier : {why}",
} as const;
