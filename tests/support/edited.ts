import type { Edit, StillhotDocument } from "../../src/core/document";

/** A drawing after some edits. @throws Error with the refusal where one is refused */
export const edited = (document: StillhotDocument, ...several: readonly Edit[]): StillhotDocument =>
  several.reduce((at, edit) => {
    const change = edit(at);
    if ("refused" in change) throw new Error(JSON.stringify(change.refused));
    return change.after;
  }, document);
