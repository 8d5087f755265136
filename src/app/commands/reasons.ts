import { pointCountOf } from "../../core";
import type { Session } from "../session/session.svelte";
import type { SketchCommand } from "./registry";

/** What commands need that may not be there, and which of them do. */
const NEEDS = {
  selection: ["first", "delete", "copy", "cut", "duplicate"],
  /** points that are selected, or at an end of what is */
  points: ["move", "pin", "stamp", "piece", "moveRight", "moveLeft", "moveDown", "moveUp"],
  one: ["details"],
  point: ["grow"],
  drawing: [
    "join",
    "gather",
    "tidy",
    "selectAll",
    "onward",
    "back",
    "sibling",
    "siblingBefore",
    "source",
    "end",
    "fit",
  ],
  workPoint: ["workPoint"],
  threat: ["nextThreat"],
  undo: ["undo"],
  redo: ["redo"],
} as const satisfies Readonly<Record<string, readonly SketchCommand[]>>;

type Need = keyof typeof NEEDS;

/** Commands that change the drawing: another window may be where it is edited. */
const EDITS: readonly SketchCommand[] = [
  ...NEEDS.points.filter((it) => it !== "stamp" && it !== "piece"),
  "first",
  "grow",
  "place",
  "join",
  "tidy",
  "undo",
  "redo",
  "delete",
  "cut",
  "paste",
  "duplicate",
];

/** What stands in the way of a command; the finder says it in words. */
export type Obstacle = Need | "readOnly";

/** Why a command cannot be done now; nothing where it can. */
export const whyNot = (session: Session, id: SketchCommand): Obstacle | undefined =>
  session.isReadOnly && EDITS.includes(id) ? "readOnly" : whatIsMissing(session, id);

/** What a command needs and is not there, whichever window is the one that edits; nothing where all is. */
export const whatIsMissing = (session: Session, id: SketchCommand): Need | undefined =>
  (Object.keys(NEEDS) as Need[]).find(
    (need) => (NEEDS[need] as readonly SketchCommand[]).includes(id) && !isMet(session, need),
  );

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
