import { complete, edits, type ElementId, jobOf, type Owner, type PointId } from "../../core";
import { type Session, SELECTING } from "../session/session.svelte";
import type { Underlay } from "./underlay.svelte";

/** Puts a pole where was tapped, or what is selected there. Who traces means the very spot. */
export function place(session: Session, traced: Underlay | undefined, x: number, y: number) {
  if (session.mode.name === "move") return moveTo(session, x, y);
  const adding = traced?.poleAt({ x, y }) ?? edits.addPoint({ x, y, kind: "pole" });
  const made = session.run(adding)?.made?.[0];
  session.mode = SELECTING;
  if (made !== undefined) session.select({ of: "point", id: made as PointId });
}

/** Moves what is selected by two taps: its first point goes to the place that was tapped. */
function moveTo(session: Session, x: number, y: number) {
  session.mode = SELECTING;
  const moving = session.movingPoints;
  const [fromX, fromY] = session.scene.points.get(moving[0] as PointId)?.spine ?? [];
  if (fromX === undefined || fromY === undefined) return;
  session.run(session.moved(x - fromX, y - fromY, 0));
}

/**
 * Takes an end of a join: a point, or the nearer end of whatever was tapped.
 *
 * @returns both ends, once there are two
 */
export function endOfJoin(
  session: Session,
  on: Owner | undefined,
  x: number,
  y: number,
): { readonly from: PointId; readonly to: PointId } | undefined {
  if (session.mode.name !== "join" || on === undefined) return undefined;
  const to = pointOf(session, on, x, y);
  if (to === undefined) return undefined;
  const { from } = session.mode;
  if (from === to) return undefined;
  session.mode = from === undefined ? { name: "join", from: to } : SELECTING;
  return from === undefined ? undefined : { from, to };
}

function pointOf(session: Session, { of, id }: Owner, x: number, y: number): PointId | undefined {
  if (of === "point") return id;
  if (of === "workPoint") return jobOf(session.document).workPoints[id]?.at;
  if (of === "structure") return session.structureOf(id)?.points[0];
  const element = complete(session.document.system.elements[id]!);
  if ("at" in element) return element.at as PointId;
  if (!("from" in element)) return undefined;
  const far = (end: string) => {
    const [atX = 0, atY = 0] = session.scene.points.get(end as PointId)?.spine ?? [];
    return Math.hypot(atX - x, atY - y);
  };
  return (far(element.from) <= far(element.to) ? element.from : element.to) as PointId;
}

/** Selects what an edit made. */
export function selectMade(session: Session, made: readonly string[]) {
  const { points, elements } = session.document.system;
  session.select(
    ...made.flatMap((id): Owner[] => [
      ...(Object.hasOwn(points, id) ? [{ of: "point", id: id as PointId } as const] : []),
      ...(Object.hasOwn(elements, id) ? [{ of: "element", id: id as ElementId } as const] : []),
    ]),
  );
}
