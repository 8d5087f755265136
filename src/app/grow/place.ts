import { completePoint, type PointId, routesOf, type Spot, type StillhotDocument } from "../../core";
import { GRID } from "../canvas/grid";

/** Two points closer than this would run into each other. */
const CLEAR = 50;

const rounded = (value: number) => Math.round(value / GRID) * GRID;

/** Directions that are tried, in degrees clockwise from the right: straight ones before slanted ones. */
const STRAIGHT = [0, 90, 180, -90];
const SLANTED = [45, 135, -135, -45];

/**
 * Where the next point goes by itself: on from the way by which one came, else to a free side, and never onto or
 * through something that is there.
 *
 * @param length how far off it should stand, in units of the drawing
 * @param width  how much room it needs across its direction
 * @param isBranch turns aside from a line that goes straight on
 */
export function placeNext(
  document: StillhotDocument,
  from: string,
  length: number,
  { width = 0, isBranch = false } = {},
): Spot & { readonly direction: number } {
  const at = completePoint(document.system.points[from as PointId]!);
  const taken = anglesAt(document, from);
  const others = Object.keys(document.system.points)
    .filter((id) => id !== from)
    .map((id) => completePoint(document.system.points[id as PointId]!));
  const onward = taken.length === 1 ? taken[0]! + 180 : taken.length === 0 ? 0 : undefined;
  let best: { spot: Spot; direction: number; worth: number } | undefined;
  for (const stretch of [1, 1.5, 2, 3])
    for (const direction of [...STRAIGHT, ...SLANTED]) {
      const [cos, sin] = [Math.cos((direction * Math.PI) / 180), Math.sin((direction * Math.PI) / 180)];
      const spot = { x: rounded(at.x + cos * length * stretch), y: rounded(at.y + sin * length * stretch) };
      const room = Math.min(180, ...taken.map((it) => turn(it, direction)));
      if (room < 40) continue;
      const nearest = Math.min(Infinity, ...others.map((it) => offSegment(it, at, spot)));
      const breadth = width / 2;
      const crowded = others.some((it) => {
        const along = (it.x - at.x) * cos + (it.y - at.y) * sin;
        const across = Math.abs(-(it.x - at.x) * sin + (it.y - at.y) * cos);
        return along > 10 && along < length * stretch + 20 && across < breadth;
      });
      const straightOn = onward === undefined ? 0 : turn(direction, onward) < 20 ? (isBranch ? -1 : 2) : 0;
      const worth =
        (nearest >= CLEAR ? 6 : nearest >= 25 ? 2 : -6) +
        (crowded ? -4 : 0) +
        straightOn +
        (direction % 90 === 0 ? 1.5 : 0) +
        (direction === 0 || direction === 90 ? 0.5 : 0) -
        stretch;
      if (best === undefined || worth > best.worth) best = { spot, direction, worth };
    }
  const { spot, direction } = best ?? { spot: { x: rounded(at.x + length), y: at.y }, direction: 0 };
  return { ...spot, direction };
}

/** Directions in which something leaves a point. */
function anglesAt({ system }: StillhotDocument, point: string): number[] {
  const at = completePoint(system.points[point as PointId]!);
  const angles: number[] = [];
  for (const { from, to, start, end } of routesOf(system).values()) {
    if (to === undefined) continue;
    const isFrom = from.x === at.x && from.y === at.y;
    const isTo = to.x === at.x && to.y === at.y;
    if (isFrom) angles.push(degrees(from, start));
    if (isTo) angles.push(degrees(to, end));
  }
  return angles;
}

const degrees = (a: Spot, b: Spot): number => (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;

const turn = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

/** Distance of a spot from the way between two others. */
function offSegment(it: Spot, a: Spot, b: Spot): number {
  const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t =
    square === 0
      ? 0
      : Math.max(0, Math.min(1, ((it.x - a.x) * (b.x - a.x) + (it.y - a.y) * (b.y - a.y)) / square));
  return Math.hypot(it.x - a.x - t * (b.x - a.x), it.y - a.y - t * (b.y - a.y));
}
