import {
  type Assessment,
  type AssessmentColumns,
  type ControlSheet,
  type ElementId,
  type LookList,
  type Message,
  type Plan,
  type PointId,
  type PointNumbers,
  type ScenarioStep,
  type StillhotDocument,
  type VerifiedCutting,
  type WorkPointId,
} from "../../core";
import { type Sent, Sender } from "./copies";

/** What may be asked of a drawing off the main thread. */
export type What =
  | { readonly of: "states" }
  | { readonly of: "threats" }
  | { readonly of: "margins" }
  | { readonly of: "point"; readonly id: PointId }
  | { readonly of: "looks"; readonly id: WorkPointId }
  | { readonly of: "element"; readonly id: ElementId }
  | { readonly of: "plan" }
  | { readonly of: "piece"; readonly points: readonly PointId[]; readonly openings: number }
  | {
      readonly of: "controls";
      /** steps that are done already */
      readonly count: number;
      readonly workPoint: WorkPointId;
      readonly ticked: readonly string[];
    }
  | { readonly of: "scenario" };

/** What is asked of the worker, and the drawing that it is asked of. */
export interface WorkerQuestion {
  readonly what: What;
  readonly sent: Sent;
}

/** What the worker answers, by what it was asked. */
export type WorkerAnswer =
  | { readonly columns: AssessmentColumns }
  | Pick<Assessment, "workPoints" | "findings">
  | { readonly margins: Readonly<Record<PointId, number | null>> }
  | { readonly looks: LookList }
  | { readonly numbers: PointNumbers }
  | { readonly ampsLoadsOff: Assessment["elements"][ElementId] | undefined }
  | { readonly plan: Plan }
  | { readonly piece: VerifiedCutting }
  | { readonly sheet: ControlSheet | undefined }
  | Checked
  | Failed;

/** What playing the answer of a scenario and each of its traps came to. */
export interface Checked {
  readonly solved: boolean;
  readonly why: readonly Message[];
  readonly traps: readonly { readonly id: string; readonly label: string; readonly closes: boolean }[];
  readonly answer: readonly ScenarioStep[];
}

/** Why an answer could not be given. */
export interface Failed {
  readonly failed: string;
}

/** The drawing was sent as a change to one that is not there. */
export interface Lost {
  readonly isLost: true;
}

/** @param isNewest whether nothing else about the same was asked meanwhile */
type Hear = (answer: WorkerAnswer, isNewest: boolean) => void;

interface Asked {
  readonly document: StillhotDocument;
  readonly what: What;
  readonly hear: Hear;
}

/**
 * A worker of one's own, which is asked one thing after the other. Of what waits, only the newest about each thing is
 * asked. It is started by the first question.
 */
export class Line {
  #worker: Worker | undefined;
  #waiting: readonly Asked[] = [];
  #inFlight: Asked | undefined;
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
    worker.postMessage({ what: next.what, sent: this.#sender.send(next.document) } satisfies WorkerQuestion);
  }

  #started(): Worker {
    if (this.#worker !== undefined) return this.#worker;
    const worker = new Worker(new URL("./core.worker.ts", import.meta.url), { type: "module" });
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
