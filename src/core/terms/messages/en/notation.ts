/** Reading and writing the circuit as an indented list. */
export const notation = {
  "notation.unsaid": "{part}",
  "notation.tooLong": "The text has more than {most} letters",
  "notation.open": "a text or list that begins here has no end",
  "notation.badId": "{id} is no id: 1 to 40 letters, digits, _ and -",
  "notation.badKind": "{kind} is no kind of point, structure or element",
  "notation.badWord": "{word} means nothing here, or stands twice",
  "notation.twice": "{id} stands twice",
  "notation.noPoint": "{id} has no point above it",
  "notation.noFarEnd": "{id} has no far end: a point below it, or to=POINT",
  "notation.inFile": "{path}: {problem}",
} as const;
