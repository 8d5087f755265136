import { commands } from "../commands/registry";
import type { Session } from "../session/session.svelte";
import { walk, type WalkDirection } from "./walk";

/** Selects what lies that way from what was selected last. */
export function walkOn(session: Session, way: WalkDirection) {
  const next = walk(session.document, session.selection.at(-1), way);
  if (next !== undefined) session.select(next);
}

/** Adds to the selection what the same key without Shift goes to. */
export function extendSelection(session: Session, arrow: string) {
  const way = commands.find((it) => it.keys?.includes(arrow))?.id as WalkDirection;
  const next = walk(session.document, session.selection.at(-1), way);
  if (next !== undefined && !session.isSelected(next)) session.toggle(next);
}
