import type { Amendment } from "./amend";
import type { Step } from "../steps";

/** What an apprentice does in a rehearsal beside the steps of a job. */
export type ScenarioStep = Step | { readonly do: "go"; readonly at: string };

/** What an apprentice is to be able to do after the scenario. */
export interface Objective {
  readonly id: string;
  readonly text: string;
  /** tasks of published occupational standards, as `docs/training-coverage.md` names them */
  readonly tasks?: readonly string[];
}

/** One thing that the map has wrong: what truly stands there, and what to call it afterwards. */
export interface HiddenFact extends Amendment {
  readonly label: string;
  /** what a person reads once it is known */
  readonly text?: string;
  /** devices that do not move: element → phases, `true` for all */
  readonly seized?: Readonly<Record<string, string | true>>;
  /** devices whose handle moves and whose contacts stay closed: element → phases */
  readonly fused?: Readonly<Record<string, string | true>>;
}

/** What looking at a pole, a test, or a question to the system operator brings to light. */
export interface Reveal {
  readonly by: "inspect" | "test" | "ask";
  readonly at?: string;
  readonly element?: string;
  readonly text: string;
  /** facts and injects that are known from then on; none where the answer is of no use, or wrong */
  readonly shows?: readonly string[];
}

/** A step that is meant: each key that is given must be that of the step; `phases` must be among the step's. */
export interface StepPattern {
  readonly do?: string;
  readonly element?: string;
  readonly at?: string;
  readonly phases?: string;
  readonly with?: string;
  readonly to?: string;
}

/** Something that happens in the middle of an attempt. */
export interface Inject extends Amendment {
  readonly label: string;
  readonly after: {
    readonly step?: number;
    readonly seconds?: number;
    /** up to so many seconds later, drawn by the seed */
    readonly plusUpTo?: number;
    readonly match?: StepPattern;
  };
  /** what the crew notices; where it is left out nobody notices anything */
  readonly what?: string;
  readonly expected?: string;
  readonly expects?: Condition;
  readonly note?: string;
}

/** A sentence about an attempt that is true or not. Exactly one of the first group is given. */
export interface Condition {
  readonly step?: StepPattern;
  /** a step that was tried, whether or not the hands could do it */
  readonly tries?: StepPattern;
  readonly rule?: string;
  readonly knows?: string;
  readonly consequence?: "arc" | "fault" | "shock";
  readonly verdict?: "live" | "could-go-live" | "grounded" | "isolated";
  readonly restored?: true;
  readonly answered?: string;
  readonly predicted?: true;
  /** the job was said to be done within so many minutes by the clock of whoever played [min] */
  readonly finishedWithin?: number;
  readonly any?: readonly Condition[];
  readonly all?: readonly Condition[];
  readonly not?: Condition;

  /** with `step`, `tries`, `knows`, `rule`: not later than the first step of this kind */
  readonly before?: StepPattern;
  /** the same: not earlier than the first step of this kind */
  readonly after?: StepPattern;
  /** with `rule`: what the finding is about */
  readonly where?: string;
  /** with `verdict`: at which work point; any where it is left out */
  readonly workPoint?: string;
}

/** What counts in an attempt: what must be done, what may never be, or what is good. */
export interface Criterion {
  readonly id: string;
  readonly kind: "must" | "never" | "good";
  readonly text: string;
  readonly when: Condition;
  /** the objective that it counts for */
  readonly objective?: string;
  readonly weight?: number;
  /** of a `never`: `danger` fails the attempt at once */
  readonly severity?: "danger" | "warning" | "note";
  readonly citation?: string;
  readonly why?: string;
}

/** A mistake that the scenario invites. */
export interface Trap {
  readonly id: string;
  readonly label: string;
  /** the hidden fact that sets it, where one does */
  readonly fact?: string;
  readonly when: Condition;
  /** why it catches people, and what to do about it */
  readonly text?: string;
  readonly objective?: string;
  /** steps that fall into it, for the check that it can be fallen into */
  readonly fall?: readonly ScenarioStep[];
}

/** How much a hint gives away, the least first: where to look, what to think of, which rule it is, which step. */
export const HINT_STRENGTHS = ["where", "think", "rule", "step"] as const;

/** One of those. */
export type HintStrength = (typeof HINT_STRENGTHS)[number];

/** A ladder of help on one matter, asked for rung by rung. */
export interface Hint {
  readonly id: string;
  /** no longer offered once this holds */
  readonly until?: Condition;
  readonly where?: string;
  readonly think?: string;
  readonly rule?: string;
  readonly step?: string;
}

/** Questions and words for a debrief, in the order in which it goes: reactions, what happened, why, what is taken away. */
export interface DebriefTexts {
  readonly reactions?: readonly string[];
  readonly happened?: readonly string[];
  readonly why?: readonly string[];
  readonly takeAway?: readonly string[];
}

/** Words of the system operator that are this scenario's own. */
export interface OperatorWords {
  /** what the system operator says when the permit is given */
  readonly permit?: string;
  /** words that must come back in the repeat-back, where one is typed or chosen */
  readonly repeat?: readonly string[];
}

/** What an instructor hides and how an attempt is scored. */
export interface Scenario {
  readonly level?: number;
  readonly objectives?: readonly Objective[];
  readonly prebrief?: string;
  /** what may be taken for granted */
  readonly assume?: readonly string[];
  readonly mode?: "practice" | "exam";
  readonly minutes?: number;
  /** points that an attempt needs besides, to pass [% of all] */
  readonly passMark?: number;
  readonly seed?: number;
  readonly truth?: Readonly<Record<string, HiddenFact>>;
  readonly reveals?: readonly Reveal[];
  readonly injects?: Readonly<Record<string, Inject>>;
  readonly operator?: OperatorWords;
  readonly criteria?: readonly Criterion[];
  readonly traps?: readonly Trap[];
  readonly hints?: readonly Hint[];
  readonly debrief?: DebriefTexts;
  /** steps that play to full marks */
  readonly answer?: readonly ScenarioStep[];
  /** hidden facts that a variant may do without */
  readonly without?: readonly string[];
  /** which variant of which scenario this is; nothing in the scenario itself */
  readonly variant?: ScenarioVariant;
}

/** Of which scenario, by its title, something is the variant of a number, and by which version of the way of making them. */
export interface ScenarioVariant {
  readonly of: string;
  readonly number: number;
  readonly version: number;
}
