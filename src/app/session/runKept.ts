import type { Change, Edit } from "../../core";
import type { Session } from "./session.svelte";

/** Does an edit that may replace much, with the drawing kept as it was before; nothing is kept where it cannot be done. */
export function runKept(
  drawing: Pick<Session, "can" | "keepBefore" | "run">,
  edit: Edit,
): Change | undefined {
  if (drawing.can(edit)) drawing.keepBefore("import");
  return drawing.run(edit, { offersUndo: true });
}
