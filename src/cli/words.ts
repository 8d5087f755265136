import { AsyncLocalStorage } from "node:async_hooks";
import { type Catalogue, french, type Message, spell as spellIn } from "../core";

export type Language = "en" | "fr";

/** What `--language` may say. English is the language of whoever says nothing, so that scripts read the same everywhere. */
export const LANGUAGES: readonly Language[] = ["en", "fr"];

interface Speech {
  readonly language: Language;
  readonly catalogue: Catalogue | undefined;
}

const ENGLISH: Speech = { language: "en", catalogue: undefined };
const spoken = new AsyncLocalStorage<Speech>();

/** Carries something out in a language. It goes along with the call, so that two calls in one process do not mix. */
export const speaking = <Result>(language: Language, doing: () => Result): Result =>
  spoken.run(language === "fr" ? { language, catalogue: french } : ENGLISH, doing);

/** The language of the call and its sentences; no sentences where they are the English ones. */
export const speech = (): Speech => spoken.getStore() ?? ENGLISH;

/** A sentence in the language of the call. */
export const spell = (message: Message): string => spellIn(message, speech().catalogue);

/** The sentences as the core's options take them. */
export function inLanguage(): { readonly catalogue?: Catalogue } {
  const { catalogue } = speech();
  return catalogue === undefined ? {} : { catalogue };
}
