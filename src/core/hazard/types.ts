import type { UpsetKind } from "../devices";
import type { Settings, System, WorkPoint } from "../document";
import type { ConductorId, ElementId, Finding, Letter, WorkPointId } from "../terms";

/** What is asked about a work point: on which drawing, and within which limits. */
export interface Question {
  readonly system: System;
  readonly settings: Settings;
  readonly workPoint: WorkPoint;
}

/**
 * What a conductor is, as drawn. The words are the file format's own. `unknown`: no source on the drawing could ever reach
 * it, so its feed was left out; it counts as hot.
 */
export type ConductorState =
  | "unknown"
  | "faulted"
  | "energized"
  | "backfed"
  | "induced"
  | "grounded"
  | "isolated"
  | "neutral";

/** How a conductor stands. */
export interface ConductorReport {
  readonly state: ConductorState;
  /** to earth, loads as drawn [V] */
  readonly volts: number;
  /** to earth, loads as drawn, at the worst angles of sources that nothing keeps in step; told where it is over 1 % more [V] */
  readonly voltsWorst?: number;
  /** to earth, loads off [V] */
  readonly voltsLoadsOff: number;
  readonly angleDeg: number;
  /** elements that reach it, in order of id */
  readonly sources: readonly ElementId[];
}

/** Amperes by letter: of a two-ended element into `from`, of a one-ended one into the element. */
export interface ElementReport {
  readonly amps: Readonly<Partial<Record<Letter, number>>>;
  readonly angleDeg: Readonly<Partial<Record<Letter, number>>>;
}

/** One thing that can change without the crew doing it. */
export interface Upset {
  readonly kind: UpsetKind;
  readonly element: ElementId;
  readonly phase?: Letter;
  readonly strength: 1 | 2 | 3;
}

/** A minimal set of upsets that makes a conductor of a work point live, and what the worker would feel. */
export interface Threat {
  readonly conductor: Letter;
  /** one that reaches; null where none does (induced) */
  readonly source: ElementId | null;
  readonly strength: number;
  /** to earth with every temporary ground lifted, the higher of loads as drawn and loads off [V] */
  readonly volts: number;
  /** between the work conductor and what the worker is bonded to, grounds in place: what a meter of no load shows [V] */
  readonly exposureVolts: number;
  /** between the work conductor and earth, grounds in place [V] */
  readonly exposureToEarthVolts: number;
  /** through the body's ohms put in circuit between the work conductor and what the worker is bonded to [mA] */
  readonly bodyMilliamps: number;
  /** largest current in a grounding jumper [A] */
  readonly groundAmps: number;
  /** 116 mA / √clearingSeconds through the body's ohms [V] */
  readonly clearingLimitVolts: number;
  readonly upsets: readonly Upset[];
  /** elements from the source to the work point; empty where induced */
  readonly path: readonly ElementId[];
}

/** How a work point stands, the worst first. There is no word for safe. */
export type Verdict = "live" | "could-go-live" | "grounded" | "isolated";

/** How a work point stands, and on what that rests. */
export interface WorkPointReport {
  readonly verdict: Verdict;
  /** least strength over its threats; null when there is none up to 3 */
  readonly margin: number | null;
  readonly threats: readonly Threat[];
  /** told where the drawing has more sets of upsets than can be asked: up to this strength, under 3, the threats are all of them */
  readonly threatsCompleteTo?: number;
  /** how many points and elements that the verdict rests on are only on the map, told or assumed, not seen */
  readonly assumptions: number;
}

/** Everything that is known of one drawing as it stands. */
export interface Assessment {
  readonly conductors: Readonly<Record<ConductorId, ConductorReport>>;
  readonly elements: Readonly<Record<ElementId, ElementReport>>;
  readonly workPoints: Readonly<Record<WorkPointId, WorkPointReport>>;
  readonly findings: readonly Finding[];
}
