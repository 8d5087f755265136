import type { StillhotDocument } from "../../core";
import { type Answer, type Question, startWorker } from "../worker/assessor";

type What = NonNullable<Question["what"]>;

/** One question at a time to a worker of its own. The newest wins; what was answered stays until the next answer. */
export class Asking {
  answer = $state.raw<Answer | undefined>(undefined);
  failed = $state.raw<string | undefined>(undefined);
  #worker: Worker | undefined;
  #n = 0;
  #busy = false;
  #waiting: Question | undefined;
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
    const question = this.#waiting;
    this.#waiting = undefined;
    this.#busy = true;
    this.#started().postMessage(question);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = startWorker();
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      this.#busy = false;
      if (data.n === this.#n) {
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
