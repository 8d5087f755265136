export { mapOf, mapWith, truthOf, factsOf, nameOfFact } from "./truth";
export { type Action, isJobStep, type Prediction, secondsFor } from "./actions";
export type { EntryResult, LogEntry, PredictionResult, Standing } from "./log";
export {
  act,
  type Acted,
  type Attempt,
  type AttemptHead,
  assessmentOf,
  conductorsToPredict,
  fingerprintOf,
  forkAttempt,
  hasHiddenFacts,
  isOver,
  knownView,
  type KnownView,
  letPass,
  readAttempt,
  startAttempt,
  type StartOptions,
  verifyAttempt,
  worldAt,
  worldOf,
  writeAttempt,
} from "./attempt";
export type { World } from "./world";
export { matches, whenTrue } from "./conditions";
export {
  bestOf,
  criteriaOf,
  type CriterionResult,
  type ObjectiveResult,
  type Score,
  scoreOf,
} from "./scoring";
export { sha256 } from "./sha256";
