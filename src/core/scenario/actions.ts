import {
  HINT_STRENGTHS,
  type HintStrength,
  type ScenarioStep,
  type Step,
  STEP_NEEDS,
  stepFields,
  type StepVerb,
} from "../document";
import { checkFields } from "../document/checkFields";
import { type ConductorId, type ElementId, isObject, type Json, type JsonObject } from "../terms";

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

/** Whether what was saved can be an action: its keys and their types; what it names is looked up when it is played. */
export function isAction(value: Json | undefined): boolean {
  if (!isObject(value) || typeof value["do"] !== "string") return false;
  switch (value["do"] as Action["do"]) {
    case "hint":
      return typeof value["hint"] === "string" && HINT_STRENGTHS.includes(value["strength"] as HintStrength);
    case "predict":
      return isObject(value["prediction"]) && isPrediction(value["prediction"]);
    case "remark":
      return typeof value["text"] === "string" && ["undefined", "string"].includes(typeof value["question"]);
    case "go":
      return typeof value["at"] === "string";
    case "let-pass":
    case "finish":
    case "abandon":
      return true;
    default:
      return isStep(value);
  }
}

const isListOfText = (value: Json | undefined): boolean =>
  Array.isArray(value) && value.every((it) => typeof it === "string");

const isPrediction = ({ live, feeders }: JsonObject): boolean =>
  isListOfText(live) && (feeders === undefined || isListOfText(feeders));

const isStep = (value: JsonObject): boolean =>
  checkFields(stepFields, value).problems.length === 0 &&
  STEP_NEEDS[value["do"] as StepVerb].every((keys) => keys.some((key) => value[key] !== undefined));
