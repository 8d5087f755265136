import {
  type Change,
  complete,
  type Edit,
  edits,
  type ElementId,
  type Owner,
  type PointId,
  type StillhotDocument,
  structureOf,
} from "../../core";

/** What removing needs of a session. */
interface Removing {
  readonly document: StillhotDocument;
  readonly things: Required<edits.Things>;
  readonly thingsOnThem: Required<edits.Things>;
  selection: readonly Owner[];
  run(edit: Edit, how: { readonly offersUndo: boolean }): Change | undefined;
}

/** Removes things. @returns nothing where that is refused */
export const remove = (session: Removing, things: edits.Things) =>
  session.run(edits.removeThings(things), { offersUndo: true });

/** Removes what is selected, and selects the neighbour toward the source. */
export function removeSelected(session: Removing): void {
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
}: Removing): Owner | undefined {
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
