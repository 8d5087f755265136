export { canPaintBeside, painted } from "./painted";
export { answerWriting } from "./writing";
