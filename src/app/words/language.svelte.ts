import type { Catalogue } from "../../core";
import { inEnglish } from "./catalogue";

/** A language that the app speaks. */
export type Language = "en" | "fr";

/** The languages that there are, each by its own name. */
export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", fr: "Français" };

/** The language that the app speaks. English is the catalogue that is always there; another one is fetched when asked for. */
class Speech {
  language = $state<Language>("en");
  catalogue = $state.raw<Catalogue>(inEnglish);
  /** asked for last: words that come later than those of a newer choice are not put in their place */
  #wanted: Language = "en";

  /** what dates and numbers are written by: the device's own region where it speaks the same language */
  get locale(): string {
    const own = globalThis.navigator?.languages?.find((it) => it.startsWith(this.language));
    return own ?? this.language;
  }

  async use(language: Language): Promise<void> {
    this.#wanted = language;
    const catalogue = language === "en" ? inEnglish : (await import("./french")).french;
    if (language !== this.#wanted) return;
    this.catalogue = catalogue;
    this.language = language;
  }
}

/** The language of this window, and its sentences. */
export const speech = new Speech();

/** How long a person waits for their words before the first picture is shown in English [ms]. */
const MOST_WAIT_MS = 2_000;

/** Calls back as soon as the app speaks a language: at once in English, and soon in any case, for no words help nobody. */
export function whenSpeaking(language: Language, begin: () => void): void {
  if (language === "en") return begin();
  const waited = new Promise((done) => setTimeout(done, MOST_WAIT_MS));
  void Promise.race([speech.use(language), waited])
    .catch(() => undefined)
    .then(begin);
}

/** The language that was chosen, or else that of the device, where the app speaks it. */
export const languageFor = (chosen: Language | "system"): Language =>
  chosen === "system" ? deviceLanguage() : chosen;

const deviceLanguage = (): Language =>
  navigator.languages.map((it) => it.slice(0, 2)).find((it): it is Language => it in LANGUAGES) ?? "en";
