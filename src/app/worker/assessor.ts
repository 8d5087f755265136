import {
  type Assessment,
  fromColumns,
  jobOf,
  type RowIds,
  type StateColumn,
  stateColumn,
  type StillhotDocument,
} from "../../core";
import { fetched } from "../words/later";
import { afterPaint } from "./afterPaint";
import { isAtOnce } from "./atOnce";
import { OwnWorker } from "./ownWorker";
import type { WorkerAnswer } from "./questions";
import type * as solve from "./solve";

/** What answers without a worker, loaded when it is needed. */
export type Solver = typeof solve;

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
  readonly #states = new OwnWorker();
  readonly #threats = new OwnWorker();

  constructor(listener: Listener) {
    this.#listener = listener;
    void fetched(() => import("./solve")).then((solver) => {
      this.solver = solver;
      const waiting = this.#waitsForSolver;
      if (waiting !== undefined && waiting === this.#newest) this.ask(waiting);
    });
  }

  ask(document: StillhotDocument) {
    this.#newest = document;
    this.#waitsForSolver = undefined;
    if (isAtOnce(document) && !this.#isSlow) {
      if (this.solver === undefined) this.#waitsForSolver = document;
      else this.#answerAtOnce(document, this.solver);
      return;
    }
    // The workers would take the processor from the frame that shows the edit.
    afterPaint(() => {
      if (document === this.#newest) this.#askWorkers(document);
    });
  }

  #askWorkers(document: StillhotDocument) {
    const hear = (answer: WorkerAnswer) => this.#hear(document, answer);
    this.#states.ask(document, { of: "states" }, hear);
    if (hasWork(document)) this.#threats.ask(document, { of: "threats" }, hear);
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

  #hear(document: StillhotDocument, answer: WorkerAnswer) {
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
