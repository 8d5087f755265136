/** What was answered at a hold point. It outlasts a look at another place, and no more: whoever starts again asks again. */
class Answers {
  #given = $state.raw<readonly string[]>([]);

  has(item: string): boolean {
    return this.#given.includes(item);
  }

  /** Gives an answer, or takes it back. */
  turn(item: string) {
    this.#given = this.has(item) ? this.#given.filter((it) => it !== item) : [...this.#given, item];
  }

  forget() {
    this.#given = [];
  }
}

/** Answers at hold points, until the page is left. */
export const answers = new Answers();
