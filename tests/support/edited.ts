import type { Command, StillhotDocument } from "../../src/core/document";

/** A drawing after some edits. @throws Error with the refusal where one is refused */
export const edited = (document: StillhotDocument, ...commands: readonly Command[]): StillhotDocument =>
  commands.reduce((at, command) => {
    const change = command(at);
    if ("refused" in change) throw new Error(JSON.stringify(change.refused));
    return change.after;
  }, document);
