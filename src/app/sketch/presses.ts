/** What presses in Sketch bring about, beyond what the session does itself: fetched with the first of them. */
export { Clipboard } from "./pasting";
export { tidyUp } from "./tidying";
export { extendSelection, walkOn } from "./walking";
