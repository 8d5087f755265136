import { jobOf, type PermitState, type Step, type StillhotDocument } from "../../document";
import type { ConductorId, ElementId, Letter, Message, PointId, StructureId, WorkPointId } from "../../terms";

/** What a detector showed. */
export interface DetectorReading {
  readonly volts: number;
  readonly isDead: boolean;
  /** no voltage of the line's own: nothing, or what a neighbour induces */
  readonly isWithoutNominalVolts: boolean;
}

/** One phase of a capacitor on the line: when it was left without supply, and whether it has been shorted since. */
export interface CapacitorCharge {
  /** seconds on the job's clock; null while that phase is live, −Infinity where it was found discharged */
  readonly deadSince: number | null;
  readonly shorted: boolean;
}

/** The number of a step, from 1; 0 for never. */
export type StepNumber = number;

/** How the job stands after some steps: the drawing, the paper, the people. Never changed: a step makes a new one. */
export interface JobState {
  /** the drawing as it stands now */
  readonly document: StillhotDocument;
  readonly asFound: StillhotDocument;
  readonly played: readonly Step[];
  readonly briefed: boolean;
  /** why the briefing no longer covers the job */
  readonly briefAgain: Message | undefined;
  readonly permit: PermitState;
  /** who holds the permit, where a step says so */
  readonly permitHolder: string;
  /** the step that gave an order which has not been repeated back */
  readonly unrepeated: StepNumber;
  readonly detector: "unproven" | "proven" | "to-be-proven-again";
  /** tested dead, the detector proven before, nothing switched and no ground taken off since */
  readonly tested: ReadonlySet<ConductorId>;
  /** every reading since the last switching or ungrounding */
  readonly readings: ReadonlyMap<ConductorId, DetectorReading>;
  /** conductors that a test showed live, until somebody stops and looks */
  readonly shownLive: readonly ConductorId[];
  /** points and elements under cover */
  readonly covered: ReadonlySet<string>;
  readonly barricaded: ReadonlySet<PointId | StructureId>;
  /** work points with people on the line: work begun, no all-clear since */
  readonly workUnderWay: ReadonlySet<WorkPointId>;
  readonly lastSwitching: StepNumber;
  readonly lastGround: StepNumber;
  readonly lastUnground: StepNumber;
  readonly lastWork: StepNumber;
  readonly lastAllClear: StepNumber;
  readonly allClearRepeated: boolean;
  readonly elapsedSeconds: number;
  /** charges by capacitor and phase */
  readonly capacitors: ReadonlyMap<ElementId, ReadonlyMap<Letter, CapacitorCharge>>;
  /** loose hardware, or points, that were secured */
  readonly secured: ReadonlySet<string>;
  /** the step by which the system operator was last asked */
  readonly operatorAsked: StepNumber;
  /** tags on things whose records have no key for one */
  readonly otherTags: ReadonlySet<string>;
  /** why the last step could not be done, or changed nothing */
  readonly notDone: Message | undefined;
}

const NONE: ReadonlySet<never> = new Set();

/** A job before its first step, as the file has it. Its `done` marks do not matter: it is played from the beginning. */
export function beginJob(document: StillhotDocument): JobState {
  return {
    document,
    asFound: document,
    played: [],
    briefed: false,
    briefAgain: undefined,
    permit: jobOf(document).permit,
    permitHolder: jobOf(document).permitHolder,
    unrepeated: 0,
    detector: "unproven",
    tested: NONE,
    readings: new Map(),
    shownLive: [],
    covered: NONE,
    barricaded: NONE,
    workUnderWay: NONE,
    lastSwitching: 0,
    lastGround: 0,
    lastUnground: 0,
    lastWork: 0,
    lastAllClear: 0,
    allClearRepeated: false,
    elapsedSeconds: 0,
    capacitors: new Map(),
    secured: NONE,
    operatorAsked: 0,
    otherTags: NONE,
    notDone: undefined,
  };
}
