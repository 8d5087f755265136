import { completePoint, edits, hasPlacedPoints, tidy } from "../../core";
import type { Session } from "../session/session.svelte";

/**
 * Tidies a drawing: what is held in its place stays there; where nothing is, the whole is laid out anew.
 *
 * @returns whether anything came of it
 */
export function tidyUp(session: Session): boolean {
  const { system } = session.document;
  const isHeld =
    hasPlacedPoints(system) && Object.values(system.points).some((it) => completePoint(it).pinned);
  return session.run(isHeld ? tidy : edits.unplaceAll, { offersUndo: true }) !== undefined;
}
