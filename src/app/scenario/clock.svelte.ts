/** How often the shown minutes are looked at again [ms]: a calm clock shows no seconds. */
const LOOK_MS = 5_000;

/**
 * How long somebody has been at an attempt. It stands while the page is hidden, while another place is shown, and when
 * it is stopped by hand: an interruption is nobody's fault.
 */
export class WorkClock {
  /** seconds of all stretches that are over */
  #before = 0;
  /** when the stretch began that goes on now [ms since 1970] */
  #since: number | undefined;
  isStopped = $state(false);
  /** as it was last looked at */
  seconds = $state.raw(0);

  /** Takes up what an attempt has taken so far. */
  begin(seconds: number) {
    this.#since = undefined;
    this.#before = seconds;
    this.isStopped = false;
    this.#look();
  }

  /** Seconds up to this very moment, for the log. */
  read(): number {
    return Math.round(this.#look());
  }

  /** Runs while a page shows the attempt; what it gives back stops it. */
  run(): () => void {
    const change = () => (document.hidden || this.isStopped ? this.#stand() : this.#go());
    const look = setInterval(() => this.#look(), LOOK_MS);
    document.addEventListener("visibilitychange", change);
    window.addEventListener("pagehide", this.#stand);
    change();
    return () => {
      clearInterval(look);
      document.removeEventListener("visibilitychange", change);
      window.removeEventListener("pagehide", this.#stand);
      this.#stand();
    };
  }

  stop() {
    this.isStopped = true;
    this.#stand();
  }

  goOn() {
    this.isStopped = false;
    this.#go();
  }

  #look(): number {
    const running = this.#since === undefined ? 0 : (Date.now() - this.#since) / 1000;
    const seconds = this.#before + running;
    this.seconds = seconds;
    return seconds;
  }

  #go() {
    this.#since ??= Date.now();
    this.#look();
  }

  #stand = () => {
    if (this.#since === undefined) return;
    this.#before += (Date.now() - this.#since) / 1000;
    this.#since = undefined;
    this.#look();
  };
}
