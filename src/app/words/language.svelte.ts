import type { Catalogue, RegionId } from "../../core";
import { inEnglish } from "./catalogue";

/** A language that the app speaks. */
export type Language = "en" | "fr";

/** The languages that there are, each by its own name. */
export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", fr: "Français" };

/** Whose words the app says: those of a language, or of a region of English. */
export type Words = Language | RegionId;

/** The language that the app speaks. English is the catalogue that is always there; other words are fetched when asked for. */
class Speech {
  words = $state<Words>("en");
  catalogue = $state.raw<Catalogue>(inEnglish);
  /** asked for last: words that come later than those of a newer choice are not put in their place */
  #wanted: Words = "en";

  get language(): Language {
    return this.words === "fr" ? "fr" : "en";
  }

  /** what dates and numbers are written by: the device's own region where it speaks the same language */
  get locale(): string {
    const own = globalThis.navigator?.languages?.find((it) => it.startsWith(this.language));
    return own ?? this.language;
  }

  async use(words: Words): Promise<void> {
    this.#wanted = words;
    const catalogue =
      words === "en"
        ? inEnglish
        : words === "fr"
          ? (await import("./french")).french
          : (await import("./regional")).englishOf(words);
    if (words !== this.#wanted) return;
    this.catalogue = catalogue;
    this.words = words;
  }
}

/** The language of this window, and its sentences. */
export const speech = new Speech();

/** How long a person waits for their words before the first picture is shown in English [ms]. */
const MOST_WAIT_MS = 2_000;

/** Calls back as soon as the app says these words: at once those of plain English, and soon in any case, for no words help nobody. */
export function whenSpeaking(words: Words, begin: () => void): void {
  if (words === "en") return begin();
  const waited = new Promise((done) => setTimeout(done, MOST_WAIT_MS));
  void Promise.race([speech.use(words), waited])
    .catch(() => undefined)
    .then(begin);
}

/** What was chosen of a language and of a region. */
interface Chosen {
  readonly language: Language | "system";
  readonly region: RegionId | "usual";
}

/** The words of the language that was chosen, or else of the device's, where the app speaks it; of the region, where that is English. */
export function wordsFor({ language, region }: Chosen): Words {
  const spoken = language === "system" ? deviceLanguage() : language;
  return spoken === "en" && region !== "usual" ? region : spoken;
}

const deviceLanguage = (): Language =>
  navigator.languages.map((it) => it.slice(0, 2)).find((it): it is Language => it in LANGUAGES) ?? "en";
