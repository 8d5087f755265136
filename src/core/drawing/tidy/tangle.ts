import type { Spot } from "../shapes";

/** A straight stretch between two named places. */
export interface Stretch {
  readonly a: string;
  readonly b: string;
}

type Places = ReadonlyMap<string, Spot>;

/** Nearer than this a stretch seems to touch a point that it has no end at, and two points seem one. */
const TOUCHING = 24;

/** Whether two stretches cross, or one runs over the end of the other. Stretches that share an end do not. */
export function cross(one: Stretch, other: Stretch, places: Places): boolean {
  if (one.a === other.a || one.a === other.b || one.b === other.a || one.b === other.b) return false;
  const [a, b, c, d] = [one.a, one.b, other.a, other.b].map((id) => places.get(id)!) as [
    Spot,
    Spot,
    Spot,
    Spot,
  ];
  const side = (p: Spot, q: Spot, r: Spot) =>
    Math.sign((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** How far a spot is from a straight stretch. */
export function distanceTo(a: Spot, b: Spot, spot: Spot): number {
  const square = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const along = square === 0 ? 0 : ((spot.x - a.x) * (b.x - a.x) + (spot.y - a.y) * (b.y - a.y)) / square;
  const t = Math.max(0, Math.min(1, along));
  return Math.hypot(spot.x - a.x - t * (b.x - a.x), spot.y - a.y - t * (b.y - a.y));
}

/** How much of some stretches lies across others, over points that are not their ends, or point on point. */
export function tangleOf(
  fresh: readonly Stretch[],
  others: readonly Stretch[],
  freshPoints: readonly string[],
  places: Places,
): number {
  const all = [...others, ...fresh];
  let tangle = 0;
  fresh.forEach((one, index) => {
    const [a, b] = [places.get(one.a)!, places.get(one.b)!];
    for (const other of all.slice(0, others.length + index)) if (cross(one, other, places)) tangle += 1;
    for (const [id, spot] of places)
      if (id !== one.a && id !== one.b && distanceTo(a, b, spot) < TOUCHING) tangle += 3;
  });
  for (const id of freshPoints) {
    const spot = places.get(id)!;
    for (const { a, b } of others)
      if (a !== id && b !== id && distanceTo(places.get(a)!, places.get(b)!, spot) < TOUCHING) tangle += 3;
  }
  return tangle;
}
