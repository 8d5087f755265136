/** What is written over, other words for it. */
export interface Rewording {
  readonly names: ReadonlyMap<string, string>;
  readonly houses: ReadonlyMap<string, string>;
  readonly numbers: ReadonlyMap<string, string>;
  /** places by which the letters A, B, C go on */
  readonly turn: number;
}

const LETTERS = "ABC";

/** Letters that go on by so many places, in their order: `AC` by one is `AB`. */
export function turned(letters: string, turn: number): string {
  const phases = [...letters].filter((it) => LETTERS.includes(it));
  const others = phases.map((it) => LETTERS[(LETTERS.indexOf(it) + turn) % LETTERS.length]!);
  return others.sort().join("") + [...letters].filter((it) => !LETTERS.includes(it)).join("");
}

/** A number that is a quantity: of volts, amperes, a part of another number. */
const IS_AMOUNT = String.raw`(?!\d|[.,:]\d|\s\d|\s(?:A|V|m)\b|\s?(?:kV|kW|kVA|kvar|km|mm|min|minutes|ft|hp|%|Hz|percent)\b)`;

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);

/** A sentence or a label of the file in the words of a variant. */
export function reworded(text: string, { names, houses, numbers, turn }: Rewording): string {
  const plain = replaced(text, houses, (it) => String.raw`(?<!\d)${escaped(it)}(?!\w)`);
  const named = replaced(plain, names, (it) => String.raw`(?<!\w)${escaped(it)}(?!\w)`);
  const numbered = replaced(named, numbers, (it) =>
    it.length < 2
      ? String.raw`(?<=\b(?:[Pp]ole|[Pp]ad|[Vv]ault|[Pp]oteau|[Ss]ocle)[sx]? (?:\d+ (?:and|to|or|et|à|ou) )?)${it}\b`
      : String.raw`(?<![\d.,§$]|\d\s|\()${it}(?=[A-Z]?\b)${IS_AMOUNT}`,
  );
  return turn === 0 ? numbered : withLetters(numbered, turn);
}

/** All at once, so that what is put in is not replaced again; the longest first. */
function replaced(
  text: string,
  others: ReadonlyMap<string, string>,
  pattern: (it: string) => string,
): string {
  const keys = [...others.keys()].sort((a, b) => b.length - a.length);
  if (keys.length === 0) return text;
  return text.replace(new RegExp(keys.map(pattern).join("|"), "gu"), (found) => {
    return others.get(found) ?? found;
  });
}

/** `A` is a letter of a phase where it is no ampere, and does not begin a sentence as an article. */
const PHASES =
  /(?<![\w.,]|\d\s)(?:(?:ABC|AB|BC|AC|B|C)|A(?= and [BC]\b|, [BC]\b)|(?<=\p{Ll} |, )A)(?!\w|['’.]\w)/gu;

const withLetters = (text: string, turn: number): string =>
  text.replace(PHASES, (found) => (/^[ABC]+$/.test(found) ? turned(found, turn) : found));
