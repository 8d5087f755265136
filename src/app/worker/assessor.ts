import type {
  assess,
  Assessment,
  ElementId,
  ElementReport,
  PointId,
  PointNumbers,
  StillhotDocument,
} from "../../core";

export interface Question {
  readonly n: number;
  readonly document: StillhotDocument;
  /** what is asked of it, where it is not the assessment */
  readonly what?:
    | { readonly of: "margins" }
    | { readonly of: "point"; readonly id: PointId }
    | { readonly of: "element"; readonly id: ElementId };
}

export type Answer = { readonly n: number } & (
  | { readonly assessment: Assessment }
  | { readonly margins: Readonly<Record<PointId, number | null>> }
  | { readonly numbers: PointNumbers }
  | { readonly ampsLoadsOff: ElementReport | undefined }
  | { readonly failed: string }
);

export const startWorker = (): Worker =>
  new Worker(new URL("./assess.worker.ts", import.meta.url), { type: "module" });

/** Drawings up to this many elements are assessed at once, so that a tapped switch shows in the next frame. */
const AT_ONCE_UP_TO = 150;
/** What the main thread may spend on that; where a drawing takes longer, its next answers come from the worker. */
const AT_ONCE_MS = 12;

/** The one place that asks the core for an assessment. The newest drawing wins; older answers are dropped. */
export class Assessor {
  #assess: typeof assess | undefined;
  #worker: Worker | undefined;
  #asked = 0;
  #busy = false;
  #waiting: StillhotDocument | undefined;
  #isSlow = false;
  readonly #answer: (document: StillhotDocument, assessment: Assessment | undefined, failed?: string) => void;
  #inFlight: StillhotDocument | undefined;

  constructor(
    answer: (document: StillhotDocument, assessment: Assessment | undefined, failed?: string) => void,
  ) {
    this.#answer = answer;
    void import("./solve").then((solver) => {
      this.#assess = solver.assess;
      if (this.#waiting !== undefined) this.ask(this.#waiting);
    });
  }

  ask(document: StillhotDocument) {
    const size = Object.keys(document.system.elements).length;
    if (size <= AT_ONCE_UP_TO && !this.#isSlow) {
      if (this.#assess === undefined) {
        this.#waiting = document;
        return;
      }
      this.#waiting = undefined;
      this.#asked++;
      const from = performance.now();
      try {
        this.#answer(document, this.#assess(document));
      } catch (error) {
        this.#answer(document, undefined, error instanceof Error ? error.message : String(error));
      }
      this.#isSlow = performance.now() - from > AT_ONCE_MS;
      return;
    }
    this.#waiting = document;
    this.#next();
  }

  /** A drawing that is new to the person: what was slow for the last one says nothing about it. */
  startAfresh() {
    this.#isSlow = false;
  }

  #next() {
    if (this.#busy || this.#waiting === undefined) return;
    const document = this.#waiting;
    this.#waiting = undefined;
    this.#busy = true;
    this.#inFlight = document;
    this.#started().postMessage({ n: ++this.#asked, document } satisfies Question);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = startWorker();
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => {
      this.#busy = false;
      if (data.n === this.#asked && this.#waiting === undefined && this.#inFlight !== undefined)
        if ("assessment" in data) this.#answer(this.#inFlight, data.assessment);
        else if ("failed" in data) this.#answer(this.#inFlight, undefined, data.failed);
      this.#next();
    });
    worker.addEventListener("error", (event) => {
      this.#busy = false;
      if (this.#inFlight !== undefined) this.#answer(this.#inFlight, undefined, event.message);
      this.#worker?.terminate();
      this.#worker = undefined;
      this.#next();
    });
    this.#worker = worker;
    return worker;
  }
}
