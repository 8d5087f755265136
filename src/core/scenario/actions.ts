import { HINT_STRENGTHS, type HintStrength, type ScenarioStep, type Step } from "../document";
import type { ConductorId, ElementId, Json } from "../terms";

/** What the apprentice thinks before the first operation. */
export interface Prediction {
  /** conductors that are live as things stand */
  readonly live: readonly ConductorId[];
  /** things that could make a work point live by one mistake or one accident */
  readonly feeders?: readonly ElementId[];
}

/** Everything that an apprentice can do in an attempt. */
export type Action =
  | ScenarioStep
  | { readonly do: "predict"; readonly prediction: Prediction }
  | { readonly do: "hint"; readonly hint: string; readonly strength: HintStrength }
  /** an answer to a question of the debrief, or a thought on the way */
  | { readonly do: "remark"; readonly question?: string; readonly text: string }
  /** nothing is done, and time passes */
  | { readonly do: "let-pass" }
  | { readonly do: "finish" }
  | { readonly do: "abandon" };

const OTHERS = ["go", "predict", "hint", "remark", "let-pass", "finish", "abandon"] as const;
type Other = (typeof OTHERS)[number];

/** A step of the job, as against walking, asking for a hint and the like. */
export const isJobStep = (action: Action): action is Step => !OTHERS.includes(action.do as Other);

/** What an action is about, in one word: an element, a point, a hint. */
export function objectOf(action: Action): string {
  if (action.do === "hint") return action.hint;
  if (action.do === "remark") return action.question ?? "";
  if (action.do === "go") return action.at;
  return isJobStep(action) ? (action.element ?? action.at ?? "") : "";
}

/**
 * Seconds that a thing takes where nobody measures them. Round figures for a rehearsal, of no source: they only let
 * injects that wait for a time happen in the middle of the work.
 */
const SECONDS: Partial<Record<Action["do"], number>> = {
  brief: 120,
  go: 60,
  inspect: 30,
  test: 30,
  "check-detector": 15,
  tag: 20,
  untag: 20,
  block: 20,
  unblock: 20,
  ground: 120,
  unground: 120,
  work: 600,
  confirm: 10,
  "all-clear": 30,
  "stand-clear": 10,
  note: 0,
  predict: 0,
  hint: 0,
  remark: 0,
  "let-pass": 0,
  finish: 0,
  abandon: 0,
};

export const secondsFor = (action: Action): number =>
  action.do === "wait" ? (action.seconds ?? 0) : (SECONDS[action.do] ?? 45);

/** Whether what was saved can be an action: its shape only; what it names is looked up when it is played. */
export function isAction(value: Json | undefined): boolean {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return false;
  const action = value as { readonly [key: string]: Json | undefined };
  if (typeof action["do"] !== "string") return false;
  if (action["do"] === "hint")
    return typeof action["hint"] === "string" && HINT_STRENGTHS.includes(action["strength"] as HintStrength);
  if (action["do"] === "predict") {
    const prediction = action["prediction"] as { live?: Json } | null | undefined;
    return typeof prediction === "object" && prediction !== null && Array.isArray(prediction.live);
  }
  return true;
}
