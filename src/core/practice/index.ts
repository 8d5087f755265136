export { generateTap, generateTapText, TAP_VERSIONS, type TapRequest } from "./generate/generate";
export { type Level, LEVELS } from "./generate/levels";
export { type TapLanguage } from "./generate/words";
