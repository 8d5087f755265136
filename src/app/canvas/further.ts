/** What the board does without at first: what comes of an edit, a choice or a step back. */
export { overviewOf } from "../../core";
export { isInSight } from "./inSight";
export { keepingMiddle } from "./keepingMiddle";
export { motionBetween } from "./motion";
export { renewedPlaces } from "./renewedPlaces";
export { revealing, revealingAll } from "./revealing";
export { paintLit, paintOver } from "./paintAround";
export { isSameOver } from "./sameOver";
export { pixelByPixel, staleParts, stretchedAs } from "./stale";
