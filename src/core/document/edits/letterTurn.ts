/** How many letters on each phase goes: `A` becomes `B` by one, and `C` becomes `A`. The order of phases stays. */
export type LetterTurn = 0 | 1 | 2;

/** Letters with their phases named onward, in the order of phases. */
export const turnedLetters = (letters: string, by: LetterTurn): string =>
  [...letters]
    .map((it) => (/[ABC]/.test(it) ? "ABC".charAt(("ABC".indexOf(it) + by) % 3) : it))
    .sort((one, other) => ORDER.indexOf(one) - ORDER.indexOf(other))
    .join("");

const ORDER = "ABC12N";
