import type { Language } from "../words/language.svelte";

export type Theme = "system" | "sun" | "night";

interface Saved {
  readonly theme: Theme;
  readonly glove: boolean;
  readonly units: "metric" | "imperial";
  readonly singleKeys: boolean;
  readonly hand: "right" | "left";
  readonly language: Language | "system";
}

const DEFAULTS: Saved = {
  theme: "system",
  glove: false,
  units: "metric",
  singleKeys: true,
  hand: "right",
  language: "system",
};
const KEY = "stillhot-preferences";

function saved(): Saved {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return typeof found === "object" && found !== null ? { ...DEFAULTS, ...found } : DEFAULTS;
  } catch {
    return DEFAULTS;
  }
}

/** How this device shows the app. Kept on the device; nothing of it goes into a drawing. */
class Preferences {
  #now = $state.raw<Saved>(saved());
  #systemIsDark = $state(matchMedia("(prefers-color-scheme: dark)").matches);

  constructor() {
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", (event) => {
      this.#systemIsDark = event.matches;
    });
  }

  get theme() {
    return this.#now.theme;
  }
  get glove() {
    return this.#now.glove;
  }
  get units() {
    return this.#now.units;
  }
  get singleKeys() {
    return this.#now.singleKeys;
  }
  get hand() {
    return this.#now.hand;
  }
  get language() {
    return this.#now.language;
  }

  /** the palette that the theme comes to */
  get palette(): "sun" | "night" {
    if (this.theme === "system") return this.#systemIsDark ? "night" : "sun";
    return this.theme;
  }

  set(change: Partial<Saved>) {
    this.#now = { ...this.#now, ...change };
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#now));
    } catch {
      // A device that keeps nothing still shows what was chosen until the page closes.
    }
  }
}

export const preferences = new Preferences();
