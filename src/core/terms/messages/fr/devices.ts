/** Ce que le lecteur attend d'une valeur. */
export const devices = {
  "read.expected": "trouvé {found}, attendu {expected}",
  "read.text": "un texte de 2000 lettres au plus",
  "read.day": "un jour, par exemple 2026-03-31",
  "read.flag": "true ou false",
  "read.number": "un nombre{unit}{bounds}",
  "read.wholeNumber": "un nombre entier{unit}{bounds}",
  "read.bound": ", {bound}{more}",
  "read.min": "au moins {min}",
  "read.above": "plus de {above}",
  "read.max": "au plus {max}",
  "read.oneOf": "l'un de {choices}",
  "read.lettersAbc": "des lettres de ABC, dans cet ordre, chacune une fois",
  "read.letters": "des lettres de ABC ou de 12, dans cet ordre, chacune une fois",
  "read.ownPhases": "des lettres des phases de l'élément ({phases}), ou true pour toutes",
  "read.otherLetters":
    "autant de lettres différentes que les phases de l'élément ({phases}), dans leur ordre",
  "read.ids": "une liste d’identifiants, chacun une fois",
  "read.id": "un identifiant de 1 à 40 lettres, chiffres, _ et -",
  "read.impedance": "une impédance [r, x] en ohms, r non négatif et pas les deux nuls",
  "read.matrix": "une matrice carrée d'au plus 4 rangées de nombres ({entries})",
  "read.equal":
    "volts, ohms, voltsLoadsOff et ohmsLoadsOff, chacun avec autant de lignes qu'il y a de conducteurs",
  "read.equalSize": "il y faut {size} lignes, une par phase, ou une de plus pour le neutre",
  "read.matrixSize":
    "la matrice demande {size} rangées et colonnes : les phases, puis le neutre s'il y en a un",
  "read.taps": "un objet de phases et de prises entières de -16 à 16",
  "read.fuse": 'un fusible { "type": "K" ou "T", "amps": nombre } ou "solid"',
  "read.gangPart":
    "est un appareil à commande commune ouvert sur {open} seulement ; il s'ouvre sur tout {phases} ou sur rien",
  "read.noNeutral": "nomme N, mais cette portée n'a pas de neutre",
  "read.bankPhases": "un transformateur {connection} demande {count} phases primaires, trouvé {phases}",
  "read.midTap": "un banc {connection} n'a pas d'enroulement secondaire {midTap} à prise",
  "read.noStar": "un banc {connection} n'a pas là de point étoile au neutre",
  "read.leakages":
    "les trois réactances de fuite {first}, {second} et {between} % ne peuvent pas être celles d'un même noyau : l'une est trop grande à côté des autres",
  "read.missing": "manque",
  "read.deltaOnePhase": "est en triangle sur une phase ; un triangle tient entre deux phases ou trois",
  "read.faultOnePhase": "est entre phases, mais ne nomme qu'une phase",
} as const;
