import { AsyncLocalStorage } from "node:async_hooks";
import {
  type Catalogue,
  english,
  french,
  type Message,
  type MessageGaps,
  type MessageKey as CoreKey,
  spell as spellIn,
  unbroken,
} from "../core";
import { cli } from "./messages/en";
import { cli as enFrancais } from "./messages/fr";

/** A language that the program answers in. */
export type Language = "en" | "fr";

/** What `--language` may say. English is the language of whoever says nothing, so that scripts read the same everywhere. */
export const LANGUAGES: readonly Language[] = ["en", "fr"];

interface Speech {
  readonly language: Language;
  readonly catalogue: Catalogue;
}

/** What the core says, and what only the command line does. */
export type MessageKey = CoreKey | keyof typeof cli;

const SPEECH: Readonly<Record<Language, Speech>> = {
  en: { language: "en", catalogue: { ...english, ...cli } },
  fr: { language: "fr", catalogue: { ...french, ...unbroken(enFrancais) } },
};
const spoken = new AsyncLocalStorage<Speech>();

/** Carries something out in a language. It goes along with the call, so that two calls in one process do not mix. */
export const speaking = <Result>(language: Language, doing: () => Result): Result =>
  spoken.run(SPEECH[language], doing);

/** The language of the call and its sentences. */
export const speech = (): Speech => spoken.getStore() ?? SPEECH.en;

/** A sentence, the core's or the command line's own: its key, and what fills its gaps. */
export const say = (key: MessageKey, gaps?: MessageGaps): Message =>
  gaps === undefined ? { key } : { key, with: gaps };

/** A sentence in the language of the call. */
export const spell = (message: Message | string): string => spellIn(message, speech().catalogue);
