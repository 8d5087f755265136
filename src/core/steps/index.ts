export * from "./classes";
export type { HoldKind, StepClass } from "./define";
export {
  type KeysOf,
  type Step,
  type StepBy,
  STEP_VERBS,
  stepOf,
  type StepVerb,
  type VerbThat,
} from "./list";
export { stepFields } from "./fields";
export { GLOVE_CLASSES, HAND_METHODS } from "./keys";
export * from "./tools";
