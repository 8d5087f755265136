export * from "./types";
export type { Step, StepBy, StepVerb } from "../steps";
export * from "./settingFields";
export * from "./structureKinds";
export * from "./settings";
export * from "./scenarioTypes";
export { scenarioForms, scenarioOf } from "./scenario";
export type { Form, FormKey } from "./shape";
export { asOf } from "./asOf";
export { type Amendment, amended, idsOf } from "./amend";
export * from "./complete";
export {
  elementOf,
  elementOfKind,
  elementsOf,
  elementsOfKind,
  groundSetsAt,
  transformersOf,
} from "./elements";
export { doneBy, spikeIdIn } from "./doneBy";
export { perObject, perQuestion } from "./perObject";
export { conductorsOf, hasNeutral, phasesAtPoint } from "./conductors";
export {
  evidenceOf,
  evidenceOfAll,
  isSameStructure,
  isSeen,
  pointsOnStructure,
  type Structure,
  isCrowded,
  MOST_TOLD_APART,
  structuresAround,
  structureOf,
  structuresOf,
} from "./structures";
export { conductorNames } from "./conductorNames";
export {
  asHeard,
  byLabel,
  calledAlike,
  elementName,
  labelIn,
  listOf,
  nameIn,
  nameOfWhere,
  nameOnStructure,
  pointName,
  structureName,
  titleOfStructure,
  workPlaceName,
  workPointName,
} from "./names";
export { type FileProblem, isUnreadable, type Unreadable } from "./problem";
export { type ReadFile, readDocument, readValue } from "./read";
export { writeDocument } from "./write";
export { canonicalText, fingerprintBytes } from "./canonical";
export { hopsFrom } from "./hops";
export { naturalOrder } from "./naturalOrder";
export { jobFields, workPointFields } from "./jobFields";
export { nextGroundId } from "./checkJob";
export {
  type DoneStep,
  isDoneStep,
  isStanding,
  type JobLogLine,
  jobLogOf,
  type JobMark,
  type SeenInstead,
} from "./jobLog";
export { isSameStep, placesInOrder } from "./logAgainstOrder";
export { asDrawn, renamedBetween } from "./jobDifference";
export type { Change, Edit } from "./edits/change";
export { objectionTo } from "./check";
export { besideOthers } from "./besideOthers";
export { perDrawing, type TouchedRecords, touchedSince } from "./touched";
export {
  elementCountOf,
  elementsAt,
  endPointsOf,
  pointCountOf,
  pointsAround,
  savedElement,
  savedPoint,
} from "./elementsAt";
export { patched, patchesBetween } from "./patching";
export type { Patch } from "immer";
export { emptyHistory, type History, readHistory, redo, redoKept, remember, undo, undoKept } from "./history";
export * as edits from "./edits";
export { jsonSchema } from "./schema";
export * from "./placed";
