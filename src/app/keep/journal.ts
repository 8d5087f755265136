/**
 * The newest state of each thing of one sort, written before the call returns. IndexedDB answers later, and a page that is
 * reloaded or closed right after a tick would take the tick with it: what stands here bridges that moment. Each thing has a
 * line of its own, so that two windows never write over one another.
 */
export class Journal<Kept> {
  readonly #prefix: string;

  /** @param name of the sort of thing, none the beginning of another */
  constructor(name: string) {
    this.#prefix = `stillhot-journal-${name}`;
  }

  /** @returns whether it stands there now */
  write(id: string, kept: Kept): boolean {
    try {
      localStorage.setItem(this.#key(id), JSON.stringify(kept));
      return true;
    } catch {
      // Full or refused: an older state must not stand for this one. The slower store has it in a moment.
      this.clear(id);
      return false;
    }
  }

  read(id: string): Kept | undefined {
    return this.#at(this.#key(id));
  }

  /** What stands in every line, with what strikes it; nothing of a line that cannot be read. */
  all(): { readonly kept: Kept | undefined; readonly strike: () => void }[] {
    return this.#keys().map((key) => ({ kept: this.#at(key), strike: () => this.#remove(key) }));
  }

  clear(id: string): void {
    this.#remove(this.#key(id));
  }

  #key = (id: string) => `${this.#prefix}-${id}`;

  #keys(): string[] {
    try {
      return Object.keys(localStorage).filter((key) => key.startsWith(this.#prefix));
    } catch {
      return [];
    }
  }

  #at(key: string): Kept | undefined {
    try {
      return (JSON.parse(localStorage.getItem(key) ?? "null") as Kept | null) ?? undefined;
    } catch {
      return undefined;
    }
  }

  #remove(key: string) {
    try {
      localStorage.removeItem(key);
    } catch {
      // Then nothing was written either.
    }
  }
}
