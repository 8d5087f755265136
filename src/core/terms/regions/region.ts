import type { Catalogue } from "../message";

/** One word of the trade as the catalogue has it, and as a region says it: the usual one first, of one thing and of many. */
interface RegionWord {
  readonly one: readonly [usual: string, said: string];
  readonly many: readonly [usual: string, said: string];
  /** what stands before the region's word where there is one of it */
  readonly article: "a" | "an";
}

/** How one region says what the catalogue says in English. */
export interface Region {
  /** what it calls itself */
  readonly name: string;
  readonly words: readonly RegionWord[];
  /** sentences that are said as a whole, by their keys: those that tell how a word is called elsewhere */
  readonly sentences: Catalogue;
  /** keys of sentences in which a usual word means another thing, and so stays */
  readonly kept: readonly string[];
}

/** The same sentences in the words of a region. Gaps stay, and so do names of rules, verbs and flags. */
export const inWordsOf = (region: Region, usual: Catalogue): Catalogue =>
  Object.fromEntries(
    Object.entries(usual).map(([key, sentence]) => [key, sentenceOf(region, key, sentence ?? "")]),
  );

function sentenceOf(region: Region, key: string, usual: string): string {
  if (region.kept.includes(key)) return usual;
  return region.sentences[key] ?? saidIn(region, usual);
}

/** A text that is no sentence of a catalogue, such as one of the library, in the words of a region. */
export const saidIn = ({ words }: Region, usual: string): string =>
  words.reduce((text, word) => withWord(word, text), usual);

function withWord({ one, many, article }: RegionWord, text: string): string {
  return [one, many].reduce(
    (before, [usual, said]) =>
      before.replace(wholly(usual), (_, its: string | undefined, space: string | undefined, word: string) =>
        its === undefined
          ? lettersAs(word, said)
          : `${lettersAs(its, article)}${space}${lettersAs(word, said)}`,
      ),
    text,
  );
}

/** A word by itself, with an article before it if it has one: what a hyphen joins is a name, and a brace begins a gap. */
const wholly = (word: string): RegExp => new RegExp(`(?<![\\w{-])(?:(an?)(\\s+))?(${word})(?![\\w}-])`, "gi");

/** A word in capitals, with a capital first or with none, as another one is written. */
function lettersAs(like: string, word: string): string {
  if (like.length > 1 && like === like.toUpperCase()) return word.toUpperCase();
  const first = like.charAt(0);
  return first === first.toUpperCase() ? word.charAt(0).toUpperCase() + word.slice(1) : word;
}

/** What these regions and the catalogue call the things that a text names: whoever searches finds it by either word. */
export const alsoCalled = (regions: readonly Region[], text: string): readonly string[] =>
  regions.flatMap(({ words }) =>
    words.flatMap(({ one: [usual, said], many: [usuals, saids] }) => [
      ...(isIn(text, usual, usuals) ? [said] : []),
      ...(isIn(text, said, saids) ? [usual] : []),
    ]),
  );

const isIn = (text: string, ...words: readonly string[]): boolean =>
  words.some((it) => wholly(it).test(text));
