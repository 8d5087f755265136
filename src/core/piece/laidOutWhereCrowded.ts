import { isLine } from "../devices";
import { complete, completePoint, edits, type StillhotDocument } from "../document";
import type { PointId } from "../terms";

/** Nearer than this two structures lie over each other on the drawing: less than a plate is wide. */
const BESIDE_EACH_OTHER = 60;

/** From this share of its lines on, a drawing stands as a map has it, and not as anybody drew it [1]. */
const MANY = 0.25;

/**
 * A piece of a map: on the whole one sees where everything is, and of the piece its symbols would lie over each other. The program lays
 * it out. What a person placed so that it can be read stays where it is.
 */
export function laidOutWhereCrowded(document: StillhotDocument): StillhotDocument {
  if (!standsAsOnAMap(document)) return document;
  const laid = edits.unplaceAll(document);
  return "refused" in laid ? document : laid.after;
}

/** Whether symbols would lie over each other, since places are those of a map and not of a drawing. */
export function standsAsOnAMap({ system: { points, elements } }: StillhotDocument): boolean {
  const lines = Object.values(elements).map(complete).filter(isLine);
  const near = lines.filter(({ from, to }) => {
    const [a, b] = [completePoint(points[from as PointId]!), completePoint(points[to as PointId]!)];
    if (a.x === undefined || a.y === undefined || b.x === undefined || b.y === undefined) return false;
    return Math.hypot(a.x - b.x, a.y - b.y) < BESIDE_EACH_OTHER;
  });
  return near.length > 0 && near.length >= MANY * lines.length;
}
