import {
  type Assessment,
  type AssessmentColumns,
  elementCountOf,
  type ElementId,
  fromColumns,
  jobOf,
  type LookList,
  type PointId,
  type PointNumbers,
  type RowIds,
  type StateColumn,
  stateColumn,
  type StillhotDocument,
  type WorkPointId,
} from "../../core";
import { fetched } from "../words/later";
import { afterPaint } from "./afterPaint";
import { type Sent, Sender } from "./copies";
import type * as solve from "./solve";

export type What =
  | { readonly of: "states" }
  | { readonly of: "threats" }
  | { readonly of: "margins" }
  | { readonly of: "point"; readonly id: PointId }
  | { readonly of: "looks"; readonly id: WorkPointId }
  | { readonly of: "element"; readonly id: ElementId };

export type Question = { readonly n: number; readonly what: What } & (
  { readonly document: StillhotDocument } | { readonly sent: Sent }
);

export type Answer = { readonly n: number } & (
  | { readonly columns: AssessmentColumns }
  | Pick<Assessment, "workPoints" | "findings">
  | { readonly margins: Readonly<Record<PointId, number | null>> }
  | { readonly looks: LookList }
  | { readonly numbers: PointNumbers }
  | { readonly ampsLoadsOff: ElementReport | undefined }
  | { readonly failed: string }
  /** the drawing was sent as a change to one that is not there */
  | { readonly isLost: true }
);
export type Solver = typeof solve;

type ElementReport = Assessment["elements"][ElementId];

export const startWorker = (): Worker =>
  new Worker(new URL("./assess.worker.ts", import.meta.url), { type: "module" });

/** Drawings up to this many elements are assessed at once, so that a tapped switch shows in the next frame. */
const AT_ONCE_UP_TO = 150;
/** What the main thread may spend on that; where a drawing takes longer, its next answers come from the worker. */
const AT_ONCE_MS = 12;

/** Who hears what was found. */
export interface Listener {
  /** states and volts, and with them all that there is to say where there is no work point */
  states?(document: StillhotDocument, states: StateColumn, assessment: Assessment): void;
  assessment(document: StillhotDocument, assessment: Assessment | undefined, failed?: string): void;
}

/**
 * The one place that asks the core for an assessment. The newest drawing wins; older answers are dropped. Of a large
 * drawing the states come first: threats take far longer, and a worker of their own.
 */
export class Assessor {
  /** what works out a drawing on the main thread; nothing until it is loaded */
  solver: Solver | undefined;
  #waitsForSolver: StillhotDocument | undefined;
  #isSlow = false;
  #newest: StillhotDocument | undefined;
  #ids: RowIds | undefined;
  /** what is known of the newest drawing so far */
  #stated: { readonly document: StillhotDocument; readonly assessment: Assessment } | undefined;
  #threatened: { readonly document: StillhotDocument; readonly found: Threatened } | undefined;
  readonly #listener: Listener;
  readonly #states: Channel;
  readonly #threats: Channel;

  constructor(listener: Listener) {
    this.#listener = listener;
    this.#states = new Channel({ of: "states" }, (document, answer) => this.#hear(document, answer));
    this.#threats = new Channel({ of: "threats" }, (document, answer) => this.#hear(document, answer));
    void fetched(() => import("./solve")).then((solver) => {
      this.solver = solver;
      const waiting = this.#waitsForSolver;
      if (waiting !== undefined && waiting === this.#newest) this.ask(waiting);
    });
  }

  ask(document: StillhotDocument) {
    this.#newest = document;
    this.#waitsForSolver = undefined;
    if (elementCountOf(document.system) <= AT_ONCE_UP_TO && !this.#isSlow) {
      if (this.solver === undefined) this.#waitsForSolver = document;
      else this.#answerAtOnce(document, this.solver);
      return;
    }
    this.#states.ask(document);
    if (hasWork(document)) this.#threats.ask(document);
  }

  /** A drawing that is new to the person: what was slow for the last one says nothing about it. */
  startAfresh() {
    this.#isSlow = false;
  }

  #answerAtOnce(document: StillhotDocument, { assess }: Solver) {
    const from = performance.now();
    try {
      const assessment = assess(document);
      this.#listener.states?.(document, stateColumn(assessment.conductors), assessment);
      this.#listener.assessment(document, assessment);
    } catch (error) {
      this.#listener.assessment(document, undefined, error instanceof Error ? error.message : String(error));
    }
    this.#isSlow = performance.now() - from > AT_ONCE_MS;
  }

  #hear(document: StillhotDocument, answer: Answer) {
    if ("columns" in answer) {
      const { assessment, ids, states } = fromColumns(answer.columns, this.#ids);
      this.#ids = ids;
      if (document !== this.#newest) return;
      this.#stated = { document, assessment };
      this.#listener.states?.(document, states, assessment);
    } else if (document !== this.#newest) return;
    else if ("workPoints" in answer) this.#threatened = { document, found: answer };
    else if ("failed" in answer) return this.#listener.assessment(document, undefined, answer.failed);
    this.#tellWhole(document);
  }

  #tellWhole(document: StillhotDocument) {
    if (this.#stated?.document !== document) return;
    const { assessment } = this.#stated;
    if (!hasWork(document)) return this.#listener.assessment(document, assessment);
    if (this.#threatened?.document !== document) return;
    const { workPoints, findings } = this.#threatened.found;
    this.#listener.assessment(document, { ...assessment, workPoints, findings });
  }
}

type Threatened = Pick<Assessment, "workPoints" | "findings">;

const hasWork = (document: StillhotDocument): boolean => Object.keys(jobOf(document).workPoints).length > 0;

/** A worker that is asked one thing of one drawing after the other. While it is busy only the newest waits. */
class Channel {
  #worker: Worker | undefined;
  #n = 0;
  #waiting: StillhotDocument | undefined;
  #inFlight: StillhotDocument | undefined;
  readonly #sender = new Sender();
  readonly #what: What;
  readonly #hear: (document: StillhotDocument, answer: Answer) => void;

  constructor(what: What, hear: (document: StillhotDocument, answer: Answer) => void) {
    this.#what = what;
    this.#hear = hear;
  }

  /** The workers would take the processor from the frame that shows the edit. */
  ask(document: StillhotDocument) {
    this.#waiting = document;
    afterPaint(() => this.#next());
  }

  #next() {
    if (this.#inFlight !== undefined || this.#waiting === undefined) return;
    const document = this.#waiting;
    this.#waiting = undefined;
    this.#inFlight = document;
    const worker = this.#started();
    worker.postMessage({
      n: ++this.#n,
      what: this.#what,
      sent: this.#sender.send(document),
    } satisfies Question);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = startWorker();
    this.#sender.startAfresh();
    worker.addEventListener("message", ({ data }: MessageEvent<Answer>) => this.#take(data));
    worker.addEventListener("error", ({ message }) => {
      this.#worker?.terminate();
      this.#worker = undefined;
      this.#take({ n: this.#n, failed: message });
    });
    this.#worker = worker;
    return worker;
  }

  #take(answer: Answer) {
    const document = this.#inFlight;
    this.#inFlight = undefined;
    if ("isLost" in answer) {
      this.#sender.startAfresh();
      this.#waiting ??= document;
    } else if (document !== undefined) this.#hear(document, answer);
    this.#next();
  }
}
