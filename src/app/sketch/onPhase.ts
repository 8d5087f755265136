import { edits } from "../../core";

/** Puts a tap onto another phase; seldom needed, so it comes when it is pressed. */
export const onPhase = edits.changePhase;
