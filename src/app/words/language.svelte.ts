import type { Catalogue, RegionId } from "../../core";
import { inEnglish } from "./catalogue";

/** A language that the app speaks. */
export type Language = "en" | "fr";

/** The languages that there are, each by its own name. */
export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", fr: "Français" };

/** Whose words the app says: those of a language, or of a region of English. */
export type Words = Language | RegionId;

/** The language that the app speaks: English until others are fetched. */
class Speech {
  words = $state<Words>("en");
  catalogue = $state.raw<Catalogue>(inEnglish);

  get language(): Language {
    return this.words === "fr" ? "fr" : "en";
  }

  /** what dates and numbers are written by: the device's own region where it speaks the same language */
  get locale(): string {
    const own = globalThis.navigator?.languages?.find((it) => it.startsWith(this.language));
    return own ?? this.language;
  }
}

/** The language of this window, and its sentences. */
export const speech = new Speech();
