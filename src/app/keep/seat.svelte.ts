/** Whether this window may write a drawing: `mine`, or another window's; `asking` for the blink until that is known. */
export type SeatState = "asking" | "mine" | "elsewhere";

/** A reload finds the lock of the page before it for a moment still. */
const PATIENCE_MS = 500;
/** What another window has to save and let go, before its place is taken. */
const GRACE_MS = 2500;

interface SeatAnswers {
  /** the place came to this window after another had it: what it wrote must be read */
  readonly onTurn: () => void;
  /** another window asks for the place: save, then it is let go */
  readonly onAsked: () => Promise<void>;
  /** another window wrote this drawing */
  readonly onWritten: (rev: number) => void;
}

type Word =
  | { readonly say: "give"; readonly id: string }
  | { readonly say: "wrote"; readonly id: string; rev: number };

/** Whether a lock was taken by another window, rather than never given. */
const wasTaken = (error: unknown): boolean => error instanceof DOMException && error.name === "AbortError";

const nameOf = (id: string) => `stillhot drawing ${id}`;

/** The one place at a drawing from which it is written. A browser without locks has it always; the rev still guards. */
export class Seat {
  state = $state<SeatState>("mine");
  #id = "";
  #letGo: (() => void) | undefined;
  #waiting: AbortController | undefined;
  readonly #channel = "BroadcastChannel" in globalThis ? new BroadcastChannel("stillhot") : undefined;
  readonly #answers: SeatAnswers;

  constructor(answers: SeatAnswers) {
    this.#answers = answers;
    this.#channel?.addEventListener("message", ({ data }: MessageEvent<Word>) => void this.#heard(data));
  }

  /** Asks for the place at a drawing, and leaves the one before it. */
  sit(id: string) {
    if (id === this.#id && this.state !== "elsewhere") return;
    this.leave();
    this.#id = id;
    if (navigator.locks === undefined) return;
    this.state = "asking";
    this.#queue(id);
    setTimeout(() => void this.#seeWhoSits(id), PATIENCE_MS);
  }

  leave() {
    this.#waiting?.abort();
    this.#waiting = undefined;
    this.#letGo?.();
    this.#letGo = undefined;
    this.#id = "";
    this.state = "mine";
  }

  /** The person wants to go on here. The other window saves and lets go; one that does not answer loses the place. */
  take() {
    const id = this.#id;
    this.#channel?.postMessage({ say: "give", id } satisfies Word);
    setTimeout(() => {
      if (this.#id !== id || this.state !== "elsewhere") return;
      this.#waiting?.abort();
      this.#queue(id, true);
    }, GRACE_MS);
  }

  wrote(rev: number) {
    this.#channel?.postMessage({ say: "wrote", id: this.#id, rev } satisfies Word);
  }

  /** Not to have been answered yet is no other window: a slow device answers late. Only a lock that is held is one. */
  async #seeWhoSits(id: string) {
    const isAsking = () => this.#id === id && this.state === "asking";
    if (!isAsking()) return;
    const { held = [] } = await navigator.locks.query();
    if (!isAsking()) return;
    if (held.some((it) => it.name === nameOf(id))) this.state = "elsewhere";
    else setTimeout(() => void this.#seeWhoSits(id), PATIENCE_MS);
  }

  #queue(id: string, steal = false) {
    const waiting = new AbortController();
    this.#waiting = waiting;
    // A lock that is taken away cannot also wait for a signal.
    const options: LockOptions = steal ? { steal } : { signal: waiting.signal };
    navigator.locks
      .request(nameOf(id), options, () => {
        if (this.#id !== id) return undefined;
        const wasElsewhere = this.state === "elsewhere";
        this.state = "mine";
        if (wasElsewhere) this.#answers.onTurn();
        return new Promise<void>((letGo) => (this.#letGo = letGo));
      })
      .catch((error: unknown) => {
        if (waiting.signal.aborted || this.#id !== id) return;
        // A browser that refuses locks, as with site data blocked, is one without: asked again it refuses again.
        if (!wasTaken(error)) {
          this.state = "mine";
          return;
        }
        void this.#answers.onAsked().then(() => this.#stepBack(id));
      });
  }

  #stepBack(id: string) {
    if (this.#id !== id) return;
    this.state = "elsewhere";
    this.#letGo?.();
    this.#letGo = undefined;
    this.#queue(id);
  }

  async #heard(word: Word) {
    if (word.id !== this.#id) return;
    if (word.say === "wrote") {
      if (this.state === "elsewhere") this.#answers.onWritten(word.rev);
      return;
    }
    if (this.state !== "mine") return;
    await this.#answers.onAsked();
    this.#stepBack(word.id);
  }
}
