/**
 * The newest state of one thing, written before the call returns. IndexedDB answers later, and a page that is reloaded or
 * closed right after a tick would take the tick with it: what stands here bridges that moment.
 */
export class Journal<Kept> {
  readonly #key: string;

  /** @param name of the thing, one journal each */
  constructor(name: string) {
    this.#key = `stillhot-journal-${name}`;
  }

  write(kept: Kept): void {
    try {
      localStorage.setItem(this.#key, JSON.stringify(kept));
    } catch {
      // Full or refused: an older state must not stand for this one. The slower store has it in a moment.
      this.clear();
    }
  }

  read(): Kept | undefined {
    try {
      return (JSON.parse(localStorage.getItem(this.#key) ?? "null") as Kept | null) ?? undefined;
    } catch {
      return undefined;
    }
  }

  clear(): void {
    try {
      localStorage.removeItem(this.#key);
    } catch {
      // Then nothing was written either.
    }
  }
}
