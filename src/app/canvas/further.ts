/** What the board does without at first: what is selected or lit, what moves, and the marks of a drawing from afar. */
export { overviewOf } from "../../core";
export { motionBetween } from "./motion";
export { paintLit, paintOver } from "./paintAround";
