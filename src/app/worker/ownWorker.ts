import type { StillhotDocument } from "../../core";
import { Sender } from "./copies";
import type { Errand } from "./errands";
import type { Lost, What, WorkerAnswer } from "./questions";
import { startWorker } from "./startWorker";

/** @param isNewest whether nothing else about the same was asked meanwhile */
type Hear = (answer: WorkerAnswer, isNewest: boolean) => void;

interface AskedOfWorker {
  readonly document: StillhotDocument;
  readonly what: What;
  readonly hear: Hear;
}

/**
 * A worker of one's own, which is asked one thing after the other. Of what waits, only the newest about each thing is
 * asked. It is started by the first question.
 */
export class OwnWorker {
  #worker: Worker | undefined;
  #waiting: readonly AskedOfWorker[] = [];
  #inFlight: AskedOfWorker | undefined;
  readonly #sender = new Sender();

  ask(document: StillhotDocument, what: What, hear: Hear) {
    this.#waiting = [...this.#waiting.filter((it) => it.what.of !== what.of), { document, what, hear }];
    this.#next();
  }

  /** Nobody wants to hear of anything that was asked. */
  end() {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#inFlight = undefined;
    this.#waiting = [];
  }

  #next() {
    const [next, ...rest] = this.#waiting;
    if (this.#inFlight !== undefined || next === undefined) return;
    this.#waiting = rest;
    this.#inFlight = next;
    const worker = this.#started();
    const errand: Errand = { to: "answer", what: next.what, sent: this.#sender.send(next.document) };
    worker.postMessage(errand);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = startWorker();
    this.#sender.startAfresh();
    worker.addEventListener("message", ({ data }: MessageEvent<WorkerAnswer | Lost>) => this.#take(data));
    worker.addEventListener("error", ({ message }) => {
      worker.terminate();
      this.#worker = undefined;
      this.#take({ failed: message });
    });
    this.#worker = worker;
    return worker;
  }

  #take(answer: WorkerAnswer | Lost) {
    const asked = this.#inFlight;
    this.#inFlight = undefined;
    const isNewest = !this.#waiting.some((it) => it.what.of === asked?.what.of);
    if ("isLost" in answer) {
      this.#sender.startAfresh();
      if (asked !== undefined && isNewest) this.#waiting = [asked, ...this.#waiting];
    } else asked?.hear(answer, isNewest);
    this.#next();
  }
}
