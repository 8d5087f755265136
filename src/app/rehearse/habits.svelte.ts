interface SavedHabits {
  readonly sound: boolean;
  readonly vibration: boolean;
  /** steps and the radio's words are read aloud */
  readonly aloud: boolean;
}

const KEY = "stillhot-rehearse";
const DEFAULTS: SavedHabits = { sound: true, vibration: true, aloud: false };

function saved(): SavedHabits {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    return typeof found === "object" && found !== null ? { ...DEFAULTS, ...found } : DEFAULTS;
  } catch {
    return DEFAULTS;
  }
}

/** What this device does to ear and hand in a rehearsal. */
class Habits {
  #now = $state.raw<SavedHabits>(saved());

  get sound() {
    return this.#now.sound;
  }
  get vibration() {
    return this.#now.vibration;
  }
  get aloud() {
    return this.#now.aloud;
  }

  set(change: Partial<SavedHabits>) {
    this.#now = { ...this.#now, ...change };
    try {
      localStorage.setItem(KEY, JSON.stringify(this.#now));
    } catch {
      // Not kept on this device; it holds until the page closes.
    }
  }
}

/** What a rehearsal does to ear and hand on this device. */
export const habits = new Habits();
