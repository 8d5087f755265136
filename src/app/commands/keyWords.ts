import { firstOf } from "../words/words";

/** How a key is written: signs for arrows, the language's word for a named key, the character itself in capitals. */
export const keyWords = (chord: string): string =>
  chord === "+" || chord === "-" ? signOf(chord) : chord.split("+").map(signOf).join(" ");

const SIGNS: Readonly<Record<string, string>> = {
  ArrowRight: "→",
  ArrowLeft: "←",
  ArrowDown: "↓",
  ArrowUp: "↑",
  "-": "−",
};

const signOf = (key: string): string =>
  SIGNS[key] ?? (key.length === 1 ? key.toUpperCase() : (firstOf(`key.${key}`) ?? key));
