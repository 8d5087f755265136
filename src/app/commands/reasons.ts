import { pointCountOf } from "../../core";
import type { Session } from "../session/session.svelte";
import type { SketchCommand } from "./registry";

/** What a command needs that may not be there. */
type Need = "selection" | "points" | "one" | "point" | "drawing" | "workPoint" | "threat" | "undo" | "redo";

const NEEDS: Partial<Record<SketchCommand, Need>> = {
  first: "selection",
  grow: "point",
  join: "drawing",
  gather: "drawing",
  move: "points",
  tidy: "drawing",
  pin: "points",
  stamp: "points",
  moveRight: "points",
  moveLeft: "points",
  moveDown: "points",
  moveUp: "points",
  undo: "undo",
  redo: "redo",
  delete: "selection",
  copy: "selection",
  cut: "selection",
  duplicate: "selection",
  selectAll: "drawing",
  onward: "drawing",
  back: "drawing",
  sibling: "drawing",
  siblingBefore: "drawing",
  source: "drawing",
  end: "drawing",
  workPoint: "workPoint",
  nextThreat: "threat",
  details: "one",
  fit: "drawing",
};

/** Commands that change the drawing: another window may be where it is edited. */
const EDITS: ReadonlySet<SketchCommand> = new Set<SketchCommand>([
  "first",
  "grow",
  "place",
  "join",
  "move",
  "tidy",
  "pin",
  "moveRight",
  "moveLeft",
  "moveDown",
  "moveUp",
  "undo",
  "redo",
  "delete",
  "cut",
  "paste",
  "duplicate",
]);

/** What stands in the way of a command; the finder says it in words. */
export type Obstacle = Need | "readOnly";

/** Why a command cannot be done now; nothing where it can. */
export const whyNot = (session: Session, id: SketchCommand): Obstacle | undefined =>
  session.isReadOnly && EDITS.has(id) ? "readOnly" : whatIsMissing(session, id);

/** What a command needs and is not there, whichever window is the one that edits; nothing where all is. */
export function whatIsMissing(session: Session, id: SketchCommand): Need | undefined {
  const need = NEEDS[id];
  return need === undefined || isMet(session, need) ? undefined : need;
}

function isMet(session: Session, need: Need): boolean {
  switch (need) {
    case "selection":
      return session.selection.length > 0;
    case "points":
      return session.movingPoints.length > 0;
    case "one":
      return session.selection.length === 1;
    case "point":
      return session.onlyPoint !== undefined;
    case "drawing":
      return pointCountOf(session.document.system) > 0;
    case "workPoint":
      return session.workPoint !== undefined;
    case "threat":
      return (session.workPoint?.report?.threats.length ?? 0) > 0;
    case "undo":
      return session.canUndo;
    case "redo":
      return session.canRedo;
  }
}
