import { perObject } from "../../core";

/** What of a line is searched: its own words, and those of the group that it stands in. */
export interface Findable {
  readonly label: string;
  readonly around: string;
}

/**
 * The lines that have every word that was typed, or begin so; those whose own words begin so come first. Accents, capitals
 * and signs do not count.
 */
export function matching<Line extends Findable>(lines: readonly Line[], typed: string): readonly Line[] {
  const words = plainly(typed).split(" ").filter(Boolean);
  if (words.length === 0) return lines;
  return lines
    .map((line) => ({ line, rank: bestRankOf(plain(line), words) }))
    .filter(({ rank }) => rank > 0)
    .sort((one, other) => other.rank - one.rank)
    .map(({ line }) => line);
}

/** The words of a line as they are compared: of the thousands of a large drawing they are read once, not at each key. */
interface Plain {
  readonly name: string;
  readonly group: string;
}

const plain = perObject(({ label, around }: Findable): Plain => ({
  name: plainly(label),
  group: plainly(around),
}));

function bestRankOf(line: Plain, words: readonly string[]): number {
  const bare = withoutKind(line, words);
  const rank = rankOf(line, words);
  return bare === words ? rank : Math.max(rank, rankOf(line, bare));
}

/** `poteau30` is 30 for a line that is found by `poteau`: no space says where the word ends. */
const withoutKind = ({ group }: Plain, words: readonly string[]): readonly string[] => {
  if (numbersIn(words.join(" ")).length === 0) return words;
  const kinds = group.split(" ");
  return words.map((word) => {
    const kind = kinds.find((it) => it.length > 2 && word.startsWith(it) && word !== it);
    return kind === undefined ? word : word.slice(kind.length);
  });
};

/** 0 for a line without one of the words; more, the nearer it comes to what was typed. */
function rankOf({ name, group }: Plain, words: readonly string[]): number {
  const begins = (text: string, word: string) => ` ${text}`.includes(` ${word}`);
  const hasWords = words.every((word) => name.includes(word) || begins(group, word));
  // A number is typed as it stands on the pole, where no space says where its letters end: `P-30`, `P30`.
  if (!hasWords && !name.replaceAll(" ", "").includes(words.join(""))) return 0;
  // Whoever types 30 means pole 30 sooner than pole 300.
  const hasNumbers = numbersIn(words.join(" ")).every((it) => numbersIn(name).includes(it));
  // Words that stand together as they were typed are meant sooner than the same ones apart: `Oct 20` at 9:00, not `Oct 31` at 9:20.
  const standTogether = ` ${name} `.includes(` ${words.join(" ")} `);
  return (hasNumbers ? 4 : 0) + nearness() + (standTogether ? 0.5 : 0);

  function nearness(): number {
    if (name.startsWith(words.join(" "))) return 4;
    if (name.startsWith(words[0]!)) return 3;
    return words.every((word) => begins(name, word)) ? 2 : 1;
  }
}

const numbersIn = (text: string): readonly string[] => text.match(/\p{N}+/gu) ?? [];

const plainly = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}+]+/gu, " ")
    .trim();
