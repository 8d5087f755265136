export { mapOf, mapWith, truthOf, factsOf, nameOfFact } from "./truth";
export { type Action, isJobStep, type Prediction, secondsFor } from "./actions";
export type { EntryResult, LogEntry, PredictionResult, LoggedVerdict } from "./log";
export { type Acted, type Attempt, type AttemptHead, fingerprintOf, goesOnFrom, secondsOf } from "./attempt";
export {
  act,
  asWritten,
  forkAttempt,
  isOver,
  letPass,
  startAttempt,
  type StartOptions,
  verifyAttempt,
  worldAt,
  worldOf,
} from "./act";
export { readAttempt, readKeptAttempt, writeAttempt } from "./attemptFile";
export {
  conductorsToPredict,
  type Feedback,
  feedbackOf,
  type HintOffer,
  hintsOffered,
  knownConductors,
  type KnownConductors,
  knownView,
  type KnownView,
  liveByTheMap,
} from "./shown";
export { type Foretold, foretold } from "./foretold";
export type { World } from "./world";
export { matches, whenTrue } from "./conditions";
export {
  bestOf,
  criteriaOf,
  minutesOf,
  passMarkOf,
  type Missing,
  missedHow,
  timeCriteriaOf,
  type CriterionResult,
  type ObjectiveResult,
  type Score,
  scoreOf,
} from "./scoring";
export { isOfLesson, LESSON_VERSIONS, lessonPackage, type PackagedVersion } from "./lessonPackage";
export { type CrewRole, type HandedOver, handOver, isAbout, readHandOver, roleOf, takeOver } from "./crew";
export { resumed, suspended } from "./suspended";
export { sha256 } from "./sha256";
export {
  answerTo,
  canBeSolved,
  type FactTrap,
  planned,
  type Planner,
  playThrough,
  type Solvable,
  type TrapCheck,
  trapListOf,
  trapsCaught,
  trapsOf,
  type WholeAttempt,
} from "./checks";
export {
  actionsOf,
  compareTwo,
  type Debrief,
  debriefOf,
  type Decision,
  type AttemptDifference,
  type FactReport,
  type GoodMove,
  hintsOf,
  type InjectReport,
  type Moment,
  rulesBroken,
  timeLineOf,
  type TimeReport,
  type TrapReport,
} from "./debrief";
export { type ClassRow, type ClassView, compareMany, rowOf, type Tally } from "./compare";
export { type AttemptRecord, classCsv, recordOf } from "./record";
export { xapiOf, type XapiOptions } from "./xapi";
export * as scenarioEdits from "./edits";
export { hideStructure } from "./hideStructure";
