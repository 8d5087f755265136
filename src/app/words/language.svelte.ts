import type { Catalogue } from "../../core";

export type Language = "en" | "fr";

/** The languages that there are, each by its own name. */
export const LANGUAGES: Readonly<Record<Language, string>> = { en: "English", fr: "Français" };

/** The language that the app speaks. English is the catalogue that is always there; another one is fetched when asked for. */
class Speech {
  language = $state<Language>("en");
  catalogue = $state.raw<Catalogue | undefined>(undefined);

  /** what dates and numbers are written by: the device's own region where it speaks the same language */
  get locale(): string {
    const own = globalThis.navigator?.languages?.find((it) => it.startsWith(this.language));
    return own ?? this.language;
  }

  async use(language: Language): Promise<void> {
    const catalogue = language === "en" ? undefined : (await import("./french")).french;
    this.catalogue = catalogue;
    this.language = language;
  }
}

export const speech = new Speech();

/** The language of the device, where the app speaks it. */
export const deviceLanguage = (): Language =>
  navigator.languages.map((it) => it.slice(0, 2)).find((it): it is Language => it in LANGUAGES) ?? "en";
