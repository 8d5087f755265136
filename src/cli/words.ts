import { AsyncLocalStorage } from "node:async_hooks";
import {
  type Catalogue,
  type CoreMessageKey,
  english,
  french,
  inWordsOf,
  type Message,
  type MessageGaps,
  type RegionId,
  REGIONS,
  spell as spellIn,
  unbroken,
} from "../core";
import { cli } from "./messages/en";
import { cli as enFrancais } from "./messages/fr";

/** A language that the program answers in. */
export type Language = "en" | "fr";

/** What `--language` may say. English is the language of whoever says nothing, so that scripts read the same everywhere. */
export const LANGUAGES: readonly Language[] = ["en", "fr"];

/** The words that were asked for: those of a language, and of a region where that is English. */
export interface Manner {
  readonly language: Language;
  readonly region: RegionId | undefined;
}

interface Speech extends Manner {
  readonly catalogue: Catalogue;
}

/** What the core says, and what only the command line does. */
export type MessageKey = CoreMessageKey | keyof typeof cli;

const SPEECH: Readonly<Record<Language, Speech>> = {
  en: { language: "en", region: undefined, catalogue: { ...english, ...cli } },
  fr: { language: "fr", region: undefined, catalogue: { ...french, ...unbroken(enFrancais) } },
};
const spoken = new AsyncLocalStorage<Speech>();

/** Carries something out in the words that were asked for. They go along with the call, so that two calls in one process do not mix. */
export const speaking = <Result>(asked: Manner, doing: () => Result): Result =>
  spoken.run(speechOf(asked), doing);

function speechOf({ language, region }: Manner): Speech {
  const usual = SPEECH[language];
  return region === undefined
    ? usual
    : { language, region, catalogue: inWordsOf(REGIONS[region], usual.catalogue) };
}

/** The language and the region of the call, and its sentences. */
export const speech = (): Speech => spoken.getStore() ?? SPEECH.en;

/** A sentence, the core's or the command line's own: its key, and what fills its gaps. */
export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

/** A sentence in the language of the call. */
export const spell = (message: Message | string): string => spellIn(message, speech().catalogue);
