import { pointCountOf } from "../../core";
import type { Session } from "../session/session.svelte";
import type { SketchCommand } from "./registry";
import type { MessageKey } from "../words/catalogue";

/** What a command needs that may not be there. */
type Need = "selection" | "one" | "point" | "drawing" | "workPoint" | "threat" | "undo" | "redo";

const NEEDS: Partial<Record<SketchCommand, Need>> = {
  first: "selection",
  grow: "point",
  join: "drawing",
  gather: "drawing",
  move: "selection",
  tidy: "drawing",
  pin: "selection",
  stamp: "selection",
  moveRight: "selection",
  moveLeft: "selection",
  moveDown: "selection",
  moveUp: "selection",
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

/** Why a command cannot be done now; nothing where it can. */
export function whyNot(session: Session, id: SketchCommand): MessageKey | undefined {
  if (session.isReadOnly && EDITS.has(id)) return "find.readOnly";
  const { selection, document } = session;
  switch (NEEDS[id]) {
    case "selection":
      return selection.length === 0 ? "find.needsSelection" : undefined;
    case "one":
      return selection.length === 1 ? undefined : "find.needsOne";
    case "point":
      return selection.length === 1 && (selection[0]!.of === "point" || selection[0]!.of === "structure")
        ? undefined
        : "find.needsPoint";
    case "drawing":
      return pointCountOf(document.system) === 0 ? "find.needsDrawing" : undefined;
    case "workPoint":
      return session.workPoint === undefined ? "find.needsWorkPoint" : undefined;
    case "threat":
      return (session.workPoint?.report?.threats.length ?? 0) === 0 ? "find.needsThreat" : undefined;
    case "undo":
      return session.canUndo ? undefined : "find.noUndo";
    case "redo":
      return session.canRedo ? undefined : "find.noRedo";
    case undefined:
      return undefined;
  }
}
