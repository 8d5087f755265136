import { HINT_STRENGTHS, type HintStrength, type ScenarioStep } from "../document";
import { checkFields } from "../document/checkFields";
import { needsOf, type Step, stepFields, stepOf, type StepVerb } from "../steps";
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

/** Seconds of a step whose verb says nothing of it, and of going to another pole. */
const A_STEP = 45;
const A_WALK = 60;

/** Seconds that a thing takes where nobody measures them: round figures, which each verb gives. */
export function secondsFor(action: Action): number {
  if (action.do === "wait") return action.seconds;
  if (action.do === "go") return A_WALK;
  return isJobStep(action) ? (stepOf(action.do).seconds ?? A_STEP) : 0;
}

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
  needsOf(value["do"] as StepVerb).every((keys) => keys.some((key) => value[key] !== undefined));
