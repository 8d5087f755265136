/** Keeps the screen on while a job is ticked off, and says so where the device does not let it. */
export class Wake {
  state = $state<"off" | "on" | "refused" | "missing">("off");
  #lock: WakeLockSentinel | undefined;
  #isWanted = false;

  constructor() {
    document.addEventListener("visibilitychange", this.#again);
  }

  /** Best called from a tap: some devices ask for one. */
  async ask() {
    this.#isWanted = true;
    if (!("wakeLock" in navigator)) {
      this.state = "missing";
      return;
    }
    if (this.#lock !== undefined && !this.#lock.released) return;
    try {
      this.#lock = await navigator.wakeLock.request("screen");
      if (!this.#isWanted) return this.end();
      this.state = "on";
      this.#lock.addEventListener("release", () => {
        if (this.state === "on") this.state = "off";
      });
    } catch {
      this.state = "refused";
    }
  }

  end() {
    this.#isWanted = false;
    document.removeEventListener("visibilitychange", this.#again);
    void this.#lock?.release().catch(() => undefined);
    this.#lock = undefined;
  }

  #again = () => {
    if (this.#isWanted && document.visibilityState === "visible") void this.ask();
  };
}
