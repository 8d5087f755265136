export { generateTap, generateTapText, TAP_VERSIONS, type TapRequest } from "./generate/generate";
export { type Level, LEVELS } from "./generate/levels";
export { type TapLanguage } from "./generate/words";
export { drillOf, drillQuestion, type DrillRequest } from "./drill/drill";
export {
  DRILL_KINDS,
  type DrillKind,
  type DrillOption,
  type DrillQuestion,
  scoreOfAnswer,
} from "./drill/question";
export { letterOf, worksheetHtml, type WorksheetOptions } from "./drill/worksheet";
