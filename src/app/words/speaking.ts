import type { RegionId } from "../../core";
import { inEnglish } from "./catalogue";
import { type Language, LANGUAGES, speech, type Words } from "./language.svelte";

/** asked for last: words that come later than those of a newer choice are not put in their place */
let wanted: Words = "en";

/** Says these words from now on. English is the catalogue that is always there; others are fetched. */
export async function speak(words: Words): Promise<void> {
  wanted = words;
  const catalogue =
    words === "en"
      ? inEnglish
      : words === "fr"
        ? (await import("./french")).french
        : (await import("./regional")).englishOf(words);
  if (words !== wanted) return;
  speech.catalogue = catalogue;
  speech.words = words;
}

/** How long a person waits for their words before the first picture is shown in English [ms]. */
const MOST_WAIT_MS = 2_000;

/** Calls back as soon as the app says these words: at once those of plain English, and soon in any case, for no words help nobody. */
export function whenSpeaking(words: Words, begin: () => void): void {
  if (words === "en") return begin();
  const waited = new Promise((done) => setTimeout(done, MOST_WAIT_MS));
  void Promise.race([speak(words), waited])
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
