import { lengthOf } from "../../devices";
import {
  complete,
  completePoint,
  elementsAt,
  endPointsOf,
  hasPlacedPoints,
  isSameStructure,
  perObject,
  savedElement,
  type System,
} from "../../document";
import type { PointId } from "../../terms";

const placesOf = perObject(
  (system: System) =>
    new Map<string, { readonly x: number; readonly y: number }>(
      (Object.keys(system.points) as PointId[]).map((id) => {
        const { x, y } = completePoint(system.points[id]!);
        return [id, { x, y }] as const;
      }),
    ),
);

/**
 * How far one walks from one point to another: nothing on one pole, else along the line [m], or in the units of a drawing
 * that a person placed.
 */
export function distanceBetween(system: System, a: string, b: string): number {
  if (a === b || isSameStructure(system, a, b)) return 0;
  if (!hasPlacedPoints(system)) return wayFrom(system, a).get(b) ?? 0;
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

const waysOf = perObject((_system: System) => new Map<string, ReadonlyMap<string, number>>());

/** How far every point is from one along the line, open or closed; what hangs on one pole is no way [m]. */
function wayFrom(system: System, start: string): ReadonlyMap<string, number> {
  const known = waysOf(system);
  const found = known.get(start);
  if (found !== undefined) return found;
  const far = new Map([[start, 0]]);
  const queue = [start];
  for (let next = 0; next < queue.length; next++) {
    const here = queue[next]!;
    for (const id of elementsAt(system).get(here) ?? []) {
      const saved = savedElement(system.elements, id)!;
      const length = far.get(here)! + lengthOf(complete(saved));
      for (const end of endPointsOf(saved))
        if (length < (far.get(end) ?? Infinity)) {
          far.set(end, length);
          queue.push(end);
        }
    }
  }
  known.set(start, far);
  return far;
}
