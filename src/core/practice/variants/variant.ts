import { perObject, scenarioOf, type StillhotDocument } from "../../document";
import { isObject, type Json } from "../../terms";
import { chanceFrom } from "../generate/chance";
import type { TapLanguage } from "../generate/words";
import { otherHouses, otherNames, otherNumbers } from "./names";
import { withoutFact } from "./without";
import { reworded, type Rewording, turned } from "./words";

/** The newest way of making variants. What a number gives never changes: another way is another version. */
export const VARIANT_VERSION = 1;

/** Numbers of variants that a person can say, 0 being the file itself. */
export const MOST_VARIANT = 9999;

/** Of so many variants one hides nothing, where the scenario allows it. */
const ONE_IN = 4;

/**
 * The same scenario otherwise: its places, pole numbers, phases and addresses, and with them where it is that something is
 * hidden; in some, where the file allows it, nothing is. What is to be done, what counts and what it counts for stay.
 *
 * @param number 1 and up; 0 is the file as it is
 * @param language of the file, for what a variant says of its own
 */
export function variantOf(
  document: StillhotDocument,
  number: number,
  language: TapLanguage = "en",
): StillhotDocument {
  if (number === 0 || document.scenario === undefined) return document;
  const known = variantsOf(document);
  const made = known.get(`${language}/${number}`) ?? makeVariant(document, number, language);
  known.set(`${language}/${number}`, made);
  return made;
}

const variantsOf = perObject((_document: StillhotDocument) => new Map<string, StillhotDocument>());

function makeVariant(document: StillhotDocument, number: number, language: TapLanguage): StillhotDocument {
  const chance = chanceFrom(`variant/${VARIANT_VERSION}/${document.title}/${number}`);
  const rewording: Rewording = {
    turn: chance.between(0, 2),
    names: otherNames(document, chance),
    houses: otherHouses(document, chance),
    numbers: otherNumbers(document, chance),
  };
  const { without = [] } = scenarioOf(document);
  const isLeftOut = without.length > 0 && chance.between(1, ONE_IN) === 1;
  const drawn = isLeftOut ? withoutFact(document, chance.oneOf(without), language) : document;
  const made = rewrittenIn(drawn as unknown as Json, rewording, "") as unknown as StillhotDocument;
  const { without: _without, ...scenario } = made.scenario!;
  return {
    ...made,
    scenario: {
      ...scenario,
      variant: { of: document.title, number, version: VARIANT_VERSION },
    },
  };
}

/** A number for a name: the same name has the same variant, however it is spaced or capitalised. */
export function variantNumber(name: string): number {
  const plain = name
    .normalize("NFKD")
    .replace(/[^\p{L}\p{N}]+/gu, "")
    .toLowerCase();
  return plain === "" ? 0 : chanceFrom(`who/${plain}`).between(1, MOST_VARIANT);
}

/** Keys whose words are for people; those of rules and laws stay as they are. */
const SAID: ReadonlySet<string> = new Set([
  ...["title", "label", "text", "task", "prebrief", "assume", "what", "expected", "note", "notes"],
  ...["where", "think", "step", "permit", "repeat", "reactions", "happened", "why", "takeAway", "area"],
]);

function rewrittenIn(value: Json, words: Rewording, key: string): Json {
  if (typeof value === "string") {
    if (SAID.has(key)) return reworded(value, words);
    return isLetters(value) ? turned(value, words.turn) : value;
  }
  if (Array.isArray(value)) return value.map((it) => rewrittenIn(it, words, key));
  if (!isObject(value)) return value;
  const keys = Object.keys(value);
  const isByPhase = keys.length > 0 && keys.every((it) => /^[ABC]$/.test(it));
  return Object.fromEntries(
    keys.map((it) => [isByPhase ? turned(it, words.turn) : it, rewrittenIn(value[it]!, words, it)]),
  );
}

const isLetters = (text: string): boolean => /^(?=[ABC])A?B?C?N?$/.test(text);
