export { generateTap, generateTapText, TAP_VERSIONS, type TapRequest } from "./generate/generate";
export { type Level, LEVELS } from "./generate/levels";
export { type TapLanguage } from "./generate/words";
export { drillOf, drillQuestion, type DrillRequest, MadeDrawings } from "./drill/drill";
export {
  DRILL_KINDS,
  type DrillKind,
  type DrillOption,
  type DrillQuestion,
  scoreOfAnswer,
} from "./drill/question";
export { mapSheetHtml } from "./drill/mapSheet";
export { letterOf, worksheetHtml, type WorksheetOptions } from "./drill/worksheet";
export { BOX_DAYS, boxAfter, type InBox } from "./path/boxes";
export { dayAfter } from "./path/days";
export {
  isTried,
  type LearnerRecord,
  mergedTried,
  readLearner,
  type Tried,
  writeLearner,
} from "./path/learner";
export { lessonOf, reasonFor } from "./path/lesson";
export {
  drillName,
  FIRST_LESSON,
  type ItemProgress,
  lessonName,
  type Path,
  type PathItem,
  pathOn,
  type PathScenario,
  scenarioName,
  type TaskProgress,
} from "./path/path";
export { type Task, TASKS, TASKS_OF_DRILL } from "./path/tasks";
export { MOST_VARIANT, VARIANT_VERSION, variantNumber, variantOf } from "./variants/variant";
