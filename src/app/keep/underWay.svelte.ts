import { untrack } from "svelte";

/**
 * Work that nothing from outside may break off: a rehearsal that has begun, an attempt, a sheet in hand. Whatever wants to
 * start the page again asks here first.
 */
class UnderWay {
  #held = $state(0);
  #waiting: (() => void)[] = [];

  get is(): boolean {
    return this.#held > 0;
  }

  /** Holds everything off from here on. The returned call lets go, as the end of an effect does. */
  hold(): () => void {
    untrack(() => this.#held++);
    return () => {
      this.#held--;
      if (this.#held === 0) for (const go of this.#waiting.splice(0)) go();
    };
  }

  /** Is done at once where nothing is under way, else when the last work is left. */
  over(): Promise<void> {
    return new Promise((done) => {
      if (this.#held === 0) done();
      else this.#waiting.push(done);
    });
  }
}

/** Work of this window that nothing from outside may break off. */
export const underWay = new UnderWay();
