import { REGION_IDS, type RegionId } from "../../core";
import type { Language } from "../words/language.svelte";

/** Bright or dark, or as the device has it. */
export type Theme = "system" | "sun" | "night";

interface SavedPreferences {
  readonly theme: Theme;
  readonly glove: boolean;
  readonly units: "metric" | "imperial";
  readonly singleKeys: boolean;
  readonly hand: "right" | "left";
  readonly language: Language | "system";
  readonly region: RegionId | "usual";
}

const DEFAULTS: SavedPreferences = {
  theme: "system",
  glove: false,
  units: "metric",
  singleKeys: true,
  hand: "right",
  language: "system",
  region: "usual",
};
const KEY = "stillhot-preferences";

function saved(): SavedPreferences {
  try {
    return known(JSON.parse(localStorage.getItem(KEY) ?? "{}"));
  } catch {
    return DEFAULTS;
  }
}

/** What a preference may be. Another version of the app may have kept one that this one cannot paint. */
const CHOICES: { readonly [Name in keyof SavedPreferences]: readonly SavedPreferences[Name][] } = {
  theme: ["system", "sun", "night"],
  glove: [true, false],
  units: ["metric", "imperial"],
  singleKeys: [true, false],
  hand: ["right", "left"],
  language: ["system", "en", "fr"],
  region: ["usual", ...REGION_IDS],
};

/** The defaults, with whatever of the found ones can be. */
function known(found: unknown): SavedPreferences {
  if (typeof found !== "object" || found === null) return DEFAULTS;
  const fit = Object.entries(found).filter(
    ([name, value]) =>
      Object.hasOwn(CHOICES, name) &&
      (CHOICES[name as keyof SavedPreferences] as readonly unknown[]).includes(value),
  );
  return { ...DEFAULTS, ...Object.fromEntries(fit) };
}

/** How this device shows the app. Kept on the device; nothing of it goes into a drawing. */
class Preferences {
  #now = $state.raw<SavedPreferences>(saved());
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
  get region() {
    return this.#now.region;
  }

  /** the palette that the theme comes to */
  get palette(): "sun" | "night" {
    if (this.theme === "system") return this.#systemIsDark ? "night" : "sun";
    return this.theme;
  }

  set(change: Partial<SavedPreferences>) {
    this.#now = { ...this.#now, ...change };
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#now));
    } catch {
      // A device that keeps nothing still shows what was chosen until the page closes.
    }
  }
}

/** What whoever uses this device has chosen. */
export const preferences = new Preferences();
