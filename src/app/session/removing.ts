import { complete, edits, type ElementId, type Owner, type PointId, structureOf } from "../../core";
import type { Session } from "./session.svelte";

/** Removes things. @returns nothing where that is refused */
export const remove = (session: Session, things: edits.Things) =>
  session.run(edits.removeThings(things), { offersUndo: true });

/** Removes what is selected, and selects the neighbour toward the source. */
export function removeSelected(session: Session): void {
  const { things } = session;
  if (Object.values(things).every((it) => it.length === 0)) return;
  const heir = neighbourOf(session);
  if (remove(session, things) === undefined) return;
  const whole = things.structures.length > 0 && heir?.of === "point" ? heir.id : undefined;
  const at = whole === undefined ? undefined : structureOf(session.document.system, whole);
  if (at !== undefined) session.selection = [{ of: "structure", id: at.id }];
  else session.selection = heir === undefined ? [] : [heir];
}

function neighbourOf({
  document: { system },
  thingsOnThem: { points, elements },
}: Session): Owner | undefined {
  for (const id of elements) {
    const element = complete(system.elements[id as ElementId]!);
    const end = "from" in element ? element.from : "at" in element ? element.at : undefined;
    if (end !== undefined && !points.includes(end)) return { of: "point", id: end as PointId };
  }
  for (const saved of Object.values(system.elements)) {
    const element = complete(saved);
    if ("from" in element && points.includes(element.to) && !points.includes(element.from))
      return { of: "point", id: element.from as PointId };
  }
  return undefined;
}
