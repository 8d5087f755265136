import type { StillhotDocument } from "../../core";
import { type Answer, type Question, startWorker, type What } from "../worker/assessor";
import { Sender } from "../worker/copies";

interface Asked {
  readonly n: number;
  readonly document: StillhotDocument;
  readonly what: What;
}

/** One question at a time to a worker of its own. The newest wins; what was answered stays until the next answer. */
export class Asking {
  answer = $state.raw<Answer | undefined>(undefined);
  failed = $state.raw<string | undefined>(undefined);
  #worker: Worker | undefined;
  #n = 0;
  #busy = false;
  #waiting: Asked | undefined;
  #inFlight: Asked | undefined;
  readonly #sender = new Sender();
  #about = "";

  ask(document: StillhotDocument, what: What) {
    const about = JSON.stringify(what);
    // What is known of another thing says nothing of this one.
    if (about !== this.#about) this.answer = undefined;
    this.#about = about;
    this.#waiting = { n: ++this.#n, document, what };
    this.#next();
  }

  end() {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#busy = false;
  }

  #next() {
    if (this.#busy || this.#waiting === undefined) return;
    const { n, document, what } = (this.#inFlight = this.#waiting);
    this.#waiting = undefined;
    this.#busy = true;
    const worker = this.#started();
    worker.postMessage({ n, what, sent: this.#sender.send(document) } satisfies Question);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = startWorker();
    this.#sender.startAfresh();
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      this.#busy = false;
      if ("isLost" in data) {
        this.#sender.startAfresh();
        this.#waiting ??= this.#inFlight;
      } else if (data.n === this.#n) {
        this.failed = "failed" in data ? data.failed : undefined;
        this.answer = "failed" in data ? undefined : data;
      }
      this.#next();
    });
    worker.addEventListener("error", ({ message }) => {
      this.failed = message;
      this.end();
    });
    this.#worker = worker;
    return worker;
  }
}
