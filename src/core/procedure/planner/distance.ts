import { isSameStructure, completePoint, perObject, type System } from "../../document";
import type { PointId } from "../../terms";

const placesOf = perObject(
  (system: System) =>
    new Map(
      (Object.keys(system.points) as PointId[]).map((id) => {
        const { x, y } = completePoint(system.points[id]!);
        return [id as string, { x, y }] as const;
      }),
    ),
);

/** How far one walks from one point to another, in the drawing's own units: nothing on one pole. */
export function distanceBetween(system: System, a: string, b: string): number {
  if (a === b || isSameStructure(system, a, b)) return 0;
  const [from, to] = [placesOf(system).get(a), placesOf(system).get(b)];
  return from === undefined || to === undefined ? 0 : Math.hypot(from.x - to.x, from.y - to.y);
}

/** About how far one walks to get to all of these, always on to the nearest. */
export function walkThrough(system: System, start: string, stops: readonly string[]): number {
  const left = [...new Set(stops)].sort();
  let here = start;
  let walked = 0;
  while (left.length > 0) {
    let nearest = 0;
    let least = Infinity;
    left.forEach((it, index) => {
      const far = distanceBetween(system, here, it);
      if (far < least) [nearest, least] = [index, far];
    });
    walked += least;
    here = left.splice(nearest, 1)[0]!;
  }
  return walked;
}
