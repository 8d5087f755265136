import { DEVICES, type Field, field } from "../devices";
import { STEP_VERBS, type StepVerb } from "./types";

const optional = <Value>(needed: Field<Value>): Field<Value | undefined> => ({
  ...needed,
  required: false,
  fallback: undefined,
});

/** Keys of a job that stand by themselves; work points, tools and steps are maps and lists. */
export const jobFields = {
  task: field.text(),
  permit: field.choice(["none", "requested", "held", "released"], "none"),
};

/** Keys of a work point. Which letters its conductors may have follows from its point. */
export const workPointFields = {
  at: field.pointRef(),
  conductors: {
    ...field.text(),
    required: true,
    schema: { type: "string", pattern: "^(?!.*(.).*\\1)[ABC12N]+$" },
  },
  label: field.text(),
  evidence: DEVICES.span.fields.evidence,
};

/** Keys of a step. Which of them a verb needs is in `STEP_NEEDS`. */
export const stepFields = {
  do: field.choice(STEP_VERBS, "note", true),
  element: optional(field.elementRef()),
  /** a point; a work point in the step `work` */
  at: optional(field.pointRef()),
  phases: optional({ ...field.text(), schema: { type: "string", pattern: "^[ABC12N]*$" } }),
  with: field.text(),
  to: field.text(),
  text: field.text(),
  cable: DEVICES.ground.fields.cable,
  first: field.optionalChoice(["neutral", "phase"]),
  seconds: field.optionalAmount("s", { min: 0, max: 1e6 }),
  position: field.optionalChoice(["utility", "generator", "off"]),
  done: field.flag(false),
};

type StepKey = keyof typeof stepFields;

/** Keys without which a verb means nothing: each entry is a choice of keys, one of which must be given. */
export const STEP_NEEDS: Readonly<Record<StepVerb, readonly (readonly StepKey[])[]>> = {
  brief: [],
  "request-permit": [],
  "receive-permit": [],
  open: [["element"]],
  close: [["element"]],
  lift: [["element"]],
  attach: [["element"]],
  cut: [["element"]],
  tag: [["element"]],
  untag: [["element"]],
  block: [["element"]],
  unblock: [["element"]],
  "check-detector": [],
  test: [["at"]],
  ground: [["at"]],
  unground: [["element"]],
  pull: [["element"]],
  replace: [["element"]],
  cover: [["at", "element"]],
  uncover: [["at", "element"]],
  inspect: [["at"]],
  barricade: [["at"]],
  secure: [["element", "at"]],
  ask: [],
  join: [["element"]],
  refuse: [["element"]],
  "remove-barrel": [["element"]],
  "replace-barrel": [["element"]],
  "set-position": [["element"], ["to", "position"]],
  start: [["element"]],
  stop: [["element"]],
  wait: [["seconds"]],
  work: [["at"]],
  "all-clear": [],
  confirm: [],
  "stand-clear": [],
  "release-permit": [],
  note: [],
};
