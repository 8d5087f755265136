import type { ControlSheet, Plan, StillhotDocument, WorkPointId } from "../../core";

export type Question =
  | { readonly about: "plan"; readonly document: StillhotDocument }
  | {
      readonly about: "controls";
      readonly document: StillhotDocument;
      /** steps that are done already */
      readonly count: number;
      readonly workPoint: WorkPointId;
      readonly ticked: readonly string[];
    };

export type Answer =
  | { readonly about: "plan"; readonly plan: Plan }
  | { readonly about: "controls"; readonly sheet: ControlSheet | undefined }
  | { readonly about: "failed"; readonly why: string };

interface Waiting {
  readonly n: number;
  readonly question: Question;
  readonly tell: (answer: Answer) => void;
}

/** Asks the worker the slow questions. Of questions that wait, only the newest about a thing is asked. */
export class Asker {
  #worker: Worker | undefined;
  #n = 0;
  #busy: Waiting | undefined;
  #waiting: Waiting[] = [];

  ask(question: Question, tell: (answer: Answer) => void) {
    this.#waiting = [
      ...this.#waiting.filter((it) => it.question.about !== question.about),
      { n: ++this.#n, question, tell },
    ];
    this.#next();
  }

  /** A question that was asked is no longer of interest. */
  end() {
    this.#worker?.terminate();
    this.#worker = undefined;
    this.#busy = undefined;
    this.#waiting = [];
  }

  #next() {
    const [next, ...rest] = this.#waiting;
    if (this.#busy !== undefined || next === undefined) return;
    this.#waiting = rest;
    this.#busy = next;
    this.#started().postMessage({ n: next.n, question: next.question });
  }

  #answered(answer: Answer) {
    const asked = this.#busy;
    this.#busy = undefined;
    if (asked !== undefined && !this.#waiting.some((it) => it.question.about === asked.question.about))
      asked.tell(answer);
    this.#next();
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = new Worker(new URL("./answers.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<{ readonly answer: Answer }>) =>
      this.#answered(data.answer),
    );
    worker.addEventListener("error", (event) => {
      this.#worker?.terminate();
      this.#worker = undefined;
      this.#answered({ about: "failed", why: event.message });
    });
    this.#worker = worker;
    return worker;
  }
}
