import { act, asWritten, type Attempt, isRefusal, startAttempt, type World, worldOf } from "../../core";

/**
 * How an attempt stood after each entry of its log. It is played again once, as far as somebody looks; what follows from an
 * action by itself, the walk before it and the answer after it, stands as after the action.
 */
export class Replay {
  readonly #worlds: World[];
  #again: Attempt;
  #next = 0;

  constructor(private readonly attempt: Attempt) {
    const { document, who, startedAt, mode, seed } = attempt;
    this.#again = startAttempt(document, { who, startedAt, mode, seed });
    this.#worlds = [worldOf(this.#again)];
  }

  after(n: number): World {
    const { log } = this.attempt;
    while (this.#worlds.length <= n && this.#next < log.length) {
      const entry = log[this.#next++]!;
      const { action } = entry;
      if (action === undefined) continue;
      const acted = act(this.#again, action, asWritten(entry));
      if (isRefusal(acted)) break;
      this.#again = acted.attempt;
      const world = worldOf(this.#again);
      while (this.#worlds.length <= this.#again.log.length) this.#worlds.push(world);
    }
    return this.#worlds[Math.min(n, this.#worlds.length - 1)]!;
  }
}
