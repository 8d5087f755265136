/** Chance from a text: whole numbers only, so that the same text gives the same numbers on every machine, for ever. */
export interface Chance {
  /** a whole number from `low` to `high`, both included */
  between(low: number, high: number): number;
  oneOf<T>(items: readonly T[]): T;
  /** true so many times out of a hundred */
  percent(of: number): boolean;
  /** the same items in another order */
  shuffled<T>(items: readonly T[]): T[];
}

/** sfc32, a small fast counting generator (Doty-Humphrey, PractRand, public domain; from memory), seeded by FNV-1a. */
export function chanceFrom(text: string): Chance {
  let [a, b, c, counter] = [fnv(text, 1), fnv(text, 2), fnv(text, 3), 1];
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = ((c << 21) | (c >>> 11)) + sum;
    return sum >>> 0;
  };
  for (let round = 0; round < 16; round++) next();
  const between = (low: number, high: number): number => low + (next() % (high - low + 1));
  return {
    between,
    oneOf: (items) => items[between(0, items.length - 1)]!,
    percent: (of) => between(1, 100) <= of,
    shuffled(items) {
      const left = [...items];
      return items.map(() => left.splice(between(0, left.length - 1), 1)[0]!);
    },
  };
}

/** FNV-1a over the letters of a text (32 bits; Fowler, Noll, Vo). */
function fnv(text: string, start: number): number {
  let hash = 0x811c9dc5 ^ start;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return hash | 0;
}
