export { type FromNotation, fromNotation, type NotationProblem } from "./from";
export { type Notation, toNotation } from "./to";
