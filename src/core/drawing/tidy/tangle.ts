import { TOUCHING } from "../tolerances";
import type { Spot } from "../shapes";

/** A straight stretch between two named places. */
export interface StraightLine {
  readonly a: string;
  readonly b: string;
}

type Spots = ReadonlyMap<string, Spot>;

/**
 * How much of some stretches lies across others, over points that are not their ends, or point on point.
 *
 * @param fresh   the stretches that are judged; `others` lie there already
 * @param most    where there is more than this, it does not matter how much
 */
export function tangleOf(
  fresh: readonly StraightLine[],
  others: readonly StraightLine[],
  freshPoints: readonly string[],
  places: Spots,
  most = Infinity,
): number {
  const laid = others.map((it) => lineOf(it, places));
  let tangle = 0;
  for (const stretch of fresh) {
    const line = lineOf(stretch, places);
    for (const other of laid) if (cross(line, other)) tangle += 1;
    for (const [id, spot] of places) if (isOver(line, id, spot)) tangle += 3;
    if (tangle > most) return tangle;
    laid.push(line);
  }
  for (const id of freshPoints)
    for (const line of laid.slice(0, others.length)) if (isOver(line, id, places.get(id)!)) tangle += 3;
  return tangle;
}

/** A stretch with its ends, and the box around it. */
interface BoxedLine extends StraightLine {
  readonly from: Spot;
  readonly to: Spot;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function lineOf({ a, b }: StraightLine, places: Spots): BoxedLine {
  const [from, to] = [places.get(a)!, places.get(b)!];
  return {
    a,
    b,
    from,
    to,
    left: Math.min(from.x, to.x),
    right: Math.max(from.x, to.x),
    top: Math.min(from.y, to.y),
    bottom: Math.max(from.y, to.y),
  };
}

/** Whether two lines cross. Those that share an end do not. */
function cross(one: BoxedLine, other: BoxedLine): boolean {
  if (one.left > other.right || other.left > one.right || one.top > other.bottom || other.top > one.bottom)
    return false;
  if (one.a === other.a || one.a === other.b || one.b === other.a || one.b === other.b) return false;
  const side = ({ from, to }: BoxedLine, spot: Spot) =>
    Math.sign((to.x - from.x) * (spot.y - from.y) - (to.y - from.y) * (spot.x - from.x));
  return side(one, other.from) * side(one, other.to) < 0 && side(other, one.from) * side(other, one.to) < 0;
}

/** Whether a line runs over a point that it has no end at. */
function isOver({ a, b, from, to, left, right, top, bottom }: BoxedLine, id: string, spot: Spot): boolean {
  if (id === a || id === b) return false;
  if (spot.x < left - TOUCHING || spot.x > right + TOUCHING) return false;
  if (spot.y < top - TOUCHING || spot.y > bottom + TOUCHING) return false;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const square = dx ** 2 + dy ** 2;
  const along = square === 0 ? 0 : ((spot.x - from.x) * dx + (spot.y - from.y) * dy) / square;
  const t = Math.max(0, Math.min(1, along));
  return Math.hypot(spot.x - from.x - t * dx, spot.y - from.y - t * dy) < TOUCHING;
}
