import type { StillhotDocument } from "../../core";

/** A scenario's map that a class is to be asked about on a wall; taken once. */
export const onWall: { map?: StillhotDocument | undefined } = {};
