/** Lecture et écriture du circuit en liste décalée. */
export const notation = {
  "notation.unsaid": "{part}",
  "notation.tooLong": "Le texte a plus de {most} lettres",
  "notation.open": "un texte ou une liste qui commence ici n'a pas de fin",
  "notation.badId": "{id} n'est pas un identifiant : 1 à 40 lettres, chiffres, _ et -",
  "notation.badKind": "{kind} n'est pas une sorte de point, de structure ou d'élément",
  "notation.badWord": "{word} ne veut rien dire ici, ou s'y trouve deux fois",
  "notation.twice": "{id} s'y trouve deux fois",
  "notation.noPoint": "{id} n'a pas de point au-dessus de lui",
  "notation.noFarEnd": "{id} n'a pas d'autre bout : un point sous lui, ou to=POINT",
  "notation.inFile": "{path} : {problem}",
} as const;
