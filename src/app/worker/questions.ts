import type {
  Act,
  Assessment,
  AssessmentColumns,
  Breaking,
  ControlSheet,
  ElementId,
  LookList,
  Message,
  Owner,
  Plan,
  PointId,
  PointNumbers,
  Ranges,
  RehearsalFinding,
  ScenarioStep,
  SentStep,
  Step,
  VerifiedCutting,
  WorkPointId,
} from "../../core";
import type { Sent } from "./copies";
import type { Between } from "./player";

/** What may be asked of a drawing off the main thread. */
export type What =
  | { readonly of: "states" }
  | { readonly of: "threats" }
  | { readonly of: "margins" }
  | { readonly of: "point"; readonly id: PointId }
  | { readonly of: "looks"; readonly id: WorkPointId }
  | { readonly of: "ranges"; readonly id: WorkPointId }
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
  | { readonly of: "scenario" }
  | ({ readonly of: "step" | "would" | "seen" | "left" } & OrderMoment)
  | ({ readonly of: "acts"; readonly owner: Owner | undefined; readonly noteText: string } & OrderMoment);

/** A moment of a job: after so many steps of an order, and what came between them. */
export interface OrderMoment {
  readonly steps: readonly Step[];
  readonly between: ReadonlyMap<number, Between>;
  readonly count: number;
  /** what its first steps did, where another worker played them */
  readonly known?: readonly SentStep[];
}

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
  | { readonly ranges: Ranges }
  | { readonly numbers: PointNumbers }
  | { readonly ampsLoadsOff: Assessment["elements"][ElementId] | undefined }
  | { readonly plan: Plan }
  | { readonly piece: VerifiedCutting }
  | { readonly sheet: ControlSheet | undefined }
  | { readonly step: SentStep; readonly breaks: readonly Breaking[] }
  | { readonly left: readonly RehearsalFinding[] }
  | { readonly acts: readonly Act[] }
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
