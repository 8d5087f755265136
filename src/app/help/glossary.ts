import type { Catalogue } from "../../core";
import type { Language } from "../words/language.svelte";
import type { MessageKey } from "../words/catalogue";

/** How a word is recognised in a sentence of each language: what stands for one idea in French stands for no other. */
type Word = Readonly<Record<Language, RegExp>>;

/** Words of the trade, each with what it means and how it is called elsewhere: `guide.word.ID`, `.is` and `.also`. */
export const WORDS = {
  sideline: { en: /\bsidelines?\b/i, fr: /\bdérivations?\b/i },
  cutout: { en: /\bcutouts?\b/i, fr: /\bcoupe-circuits?\b/i },
  clamp: { en: /\bclamps?\b(?! on)/i, fr: /\bpinces?\b/i },
  lead: { en: /\b(?:a|the|its|this|these|tap|burnt|lead,) leads?\b|^leads?$/i, fr: /\bbretelles?\b/i },
  jumper: { en: /(?<!ground )\ba jumper\b/i, fr: /\bponts?\b/i },
  disconnect: { en: /\bdisconnects?\b/i, fr: /\bsectionneurs?\b/i },
  recloser: { en: /\breclosers?\b/i, fr: /\bréenclencheurs?\b/i },
  elbow: { en: /\belbows?\b/i, fr: /\bconnecteurs? coudé/i },
  bank: { en: /\bbanks?\b/i, fr: /\b(?:bancs?|batteries?)\b/i },
  secondary: { en: /\bsecondar(?:y|ies)\b/i, fr: /\bsecondaires?\b|\bbasse tension\b/i },
  service: { en: /\b(?:a|the) service\b(?! point)/i, fr: /\bbranchements?\b/i },
  ground: { en: /\bground sets?\b/i, fr: /\bterres?\b/i },
  detector: { en: /\bdetectors?\b/i, fr: /\bdétecteurs?\b/i },
  backfeed: { en: /\bback-?feeds?\b|\bbackfed\b/i, fr: /\ben retour\b|\bretours? de tension\b/i },
  tie: { en: /\ba tie\b|\bties? switch|\bto the tie\b/i, fr: /\bliaisons?\b/i },
  hotStick: { en: /\bhot stick\b/i, fr: /\bperches?\b/i },
  map: { en: /\bthe map\b(?! was)/i, fr: /\bplans?\b/i },
  operator: { en: /\bsystem operators?\b/i, fr: /\bexploitants?\b/i },
  permit: { en: /\bpermits?\b/i, fr: /\bautorisations?\b/i },
  tailboard: { en: /\btailboards?\b/i, fr: /\bréunions?\b/i },
  workPoint: { en: /\bwork points?\b/i, fr: /\bpoints? de travail\b/i },
  upset: { en: /\bupsets?\b/i, fr: /\baléas?\b/i },
  threat: { en: /\bthreats?\b/i, fr: /\bmenaces?\b/i },
  margin: { en: /\bmargins?\b/i, fr: /\bmarges?\b/i },
  exposure: { en: /\bexposure\b/i, fr: /\bexposition\b/i },
  debrief: { en: /\bdebriefs?\b/i, fr: /\bdébriefings?\b/i },
} as const satisfies Readonly<Record<string, Word>>;

/** One of these words. */
export type WordId = keyof typeof WORDS;

/** The words, in their order. */
export const WORD_IDS = Object.keys(WORDS) as WordId[];

/** Where sentences are read, by how their keys begin. */
const PLACES: readonly (readonly [place: MessageKey, keys: RegExp])[] = [
  ["place.sketch", /^(?:kind|field|help|grow|legend|verdict|state|say|lookFirst|choice|hazard|danger)\./],
  ["place.plan", /^(?:order|why|plan|control)\./],
  ["place.rehearse", /^(?:rehearse|do|doing|verb|seen|rule|ruleName|surprise|hold|tool|withTool|brief)\./],
  ["place.scenario", /^(?:play|attempt|scenario|operator)\./],
  ["place.debrief", /^(?:review|record|csv|better)\./],
  ["place.sheet", /^sheet\./],
  ["place.teach", /^(?:teach|form|formHelp)\./],
  ["place.learn", /^(?:path|lesson|drill|practise|wall|card)\./],
];

/** What stands in a gap of a sentence is no word of it. */
const withoutGaps = (sentence: string): string => sentence.replaceAll(/\{\w+\}/g, "…");

/** Keys of the sentences that use a word; the glossary itself is none of them, nor is what only the finder reads. */
export const sentencesWith = (id: WordId, catalogue: Catalogue, language: Language): string[] =>
  Object.entries(catalogue).flatMap(([key, sentence]) =>
    !/^(?:guide\.word|find\.also)\./.test(key) && WORDS[id][language].test(withoutGaps(sentence ?? ""))
      ? [key]
      : [],
  );

/** The places in whose sentences a word is used. */
export function usedIn(id: WordId, catalogue: Catalogue, language: Language): MessageKey[] {
  const keys = sentencesWith(id, catalogue, language);
  return PLACES.filter(([, of]) => keys.some((key) => of.test(key))).map(([place]) => place);
}
