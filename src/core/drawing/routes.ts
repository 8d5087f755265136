import { MOST_LAID_AGAIN } from "./tolerances";
import { type CircuitElement, deviceOf, hangsToward } from "../devices";
import {
  complete,
  completePoint,
  elementsAt,
  endPointsOf,
  perDrawing,
  perObject,
  savedElement,
  type System,
  type TouchedRecords,
} from "../document";
import type { ElementId, PointId } from "../terms";
import type { Spot } from "./shapes";

/**
 * Where an element runs: from its first point to the start of its body, along the body, and on to its second point.
 * The symbol stands on the middle of the body. An element at one point has no `to`, and its body is its symbol.
 */
export interface Route {
  readonly from: Spot;
  readonly start: Spot;
  readonly end: Spot;
  readonly to: Spot | undefined;
  /** direction of the body, a unit vector */
  readonly along: Spot;
  readonly centre: Spot;
  /** scale of the symbol: below 1 where the room is too short for it */
  readonly scale: number;
  /** the third end of a transfer switch */
  readonly alt: Spot | undefined;
  /** how it runs where the program laid the drawing out */
  readonly laid?: LaidPath;
}

/** A way of level and upright stretches, from an element's first point to its second. */
export interface LaidPath {
  readonly spots: readonly Spot[];
  /** which stretch the symbol stands on, where on it, and the way of that stretch */
  readonly bodyAt: number;
  readonly centre: Spot;
  readonly body: Spot;
  /** whether the body is square to the line */
  readonly hangs: boolean;
  /** nothing leads on from it to another structure */
  readonly isWithin: boolean;
  /** it runs from its third end to its second, as a transfer switch does that the line comes to there */
  readonly isByThird: boolean;
  /** how many units of the drawing a pixel of its letters takes */
  readonly text: number;
  /** how far from its ends its letters are clear of what hangs there */
  readonly clear: { readonly from: number; readonly to: number };
  /** on which hand of the way its first conductor runs */
  readonly hand: 1 | -1;
  readonly ends: {
    readonly hand: 1 | -1;
    /** one point that it stands at, or two that it joins */
    readonly isAt: boolean;
    readonly from: Axis;
    readonly to: Axis | undefined;
  };
}

/** How the conductors of a point run through it. */
export interface Axis {
  readonly way: Spot;
  readonly isOnLine: boolean;
  /** its conductors stand as far apart as the symbols on them */
  readonly isAbreast: boolean;
}

/** Length of a symbol between its two ends. */
export const SYMBOL = 40;
/** Two parallel elements between the same points run this far apart. */
const ABREAST = 46;
/** Points closer than this have no room for a symbol between them: the element bows out beside them. */
const TOO_CLOSE = 30;
/** How far a bow stands off the points that it joins. */
const BOW = 40;
/** How far the symbol of an element at one point stands off that point; what a person put there hangs clear of it. */
const HANG = 14;
const HANG_CLEAR = 34;

/** A spot of its two numbers, in units of the drawing. */
export const spotOf = (x: number, y: number): Spot => ({ x, y });

/** Every element's route, by id. An element whose points are missing has none. */
export const routesOf: (system: System) => ReadonlyMap<ElementId, Route> = perDrawing<
  ReadonlyMap<ElementId, Route>
>((system) => laid(system, Object.keys(system.elements)), carried);

/** The routes of elements that are given in the drawing's order, together with all others at the same points. */
function laid(system: System, ids: readonly string[]): Map<ElementId, Route> {
  const routes = new Map<ElementId, Route>();
  const taken = new Map<string, Rooms>();
  const take = (point: string, angle: number) =>
    taken.set(point, narrowed(taken.get(point) ?? ALL_ROOM, angle));
  const elements = ids.map((id) => [id as ElementId, complete(system.elements[id as ElementId]!)] as const);
  const spots = new Map<string, Spot>();
  const spot = (id: string): Spot | undefined => {
    const known = spots.get(id);
    if (known !== undefined) return known;
    const saved = system.points[id as PointId];
    if (saved === undefined) return undefined;
    const { x, y } = completePoint(saved);
    const fresh = { x, y };
    spots.set(id, fresh);
    return fresh;
  };

  const pairs = new Map<string, number>();
  const pairOf = (a: string, b: string) => (a < b ? `${a} ${b}` : `${b} ${a}`);
  for (const [, element] of elements)
    if ("from" in element) {
      const pair = pairOf(element.from, element.to);
      pairs.set(pair, (pairs.get(pair) ?? 0) + 1);
    }

  const bowed: [ElementId, CircuitElement & { from: string; to: string }][] = [];
  const seen = new Map<string, number>();
  for (const [id, element] of elements) {
    if (!("from" in element)) continue;
    const from = spot(element.from);
    const to = spot(element.to);
    if (from === undefined || to === undefined) continue;
    const length = Math.hypot(to.x - from.x, to.y - from.y);
    if (length < TOO_CLOSE) {
      bowed.push([id, element]);
      continue;
    }
    const pair = pairOf(element.from, element.to);
    const nth = seen.get(pair) ?? 0;
    seen.set(pair, nth + 1);
    const aside = (nth - (pairs.get(pair)! - 1) / 2) * ABREAST * (element.from < element.to ? 1 : -1);
    const alt = "alt" in element ? spot(element.alt) : undefined;
    const route = straight(from, to, length, aside, alt);
    routes.set(id, route);
    take(element.from, angleOf(route.from, route.start));
    take(element.to, angleOf(route.to!, route.end));
  }

  for (const [id, element] of bowed) {
    const from = spot(element.from)!;
    const to = spot(element.to)!;
    const angle = freestIn(narrower(taken.get(element.from), taken.get(element.to)), -90);
    const route = bow(from, to, angle, "alt" in element ? spot(element.alt) : undefined);
    routes.set(id, route);
    take(element.from, angle);
    if (element.to !== element.from) take(element.to, angle);
  }

  for (const [id, element] of elements) {
    if (!("at" in element)) continue;
    const at = spot(element.at);
    if (at === undefined) continue;
    const angle = freestIn(taken.get(element.at) ?? ALL_ROOM, hangsToward(element));
    take(element.at, angle);
    routes.set(id, hung(at, angle, deviceOf(element.kind).hangsClear ? HANG_CLEAR : HANG));
  }
  return routes;
}

/** Places of ids in the order of the drawing. */
const rankOf = perObject(
  (elements: System["elements"]) => new Map(Object.keys(elements).map((id, rank) => [id, rank])),
);

/** Only what stands at the points that moved, or at the other ends of what stands there, can run otherwise. */
function carried(
  was: ReadonlyMap<ElementId, Route>,
  before: System,
  after: System,
  touched: TouchedRecords,
): ReadonlyMap<ElementId, Route> | undefined {
  const moved = movedPoints(before, after, touched);
  if (moved.size === 0) return was;
  const near = new Set(moved);
  for (const point of moved)
    for (const id of elementsAt(after).get(point) ?? [])
      for (const end of endPointsOf(savedElement(after.elements, id))) near.add(end);
  const again = new Set<string>();
  for (const point of near) {
    for (const id of elementsAt(after).get(point) ?? []) {
      again.add(id);
      // Which way a bow stands depends on what stands at both of its ends, and what hangs there on the bow.
      if (isBowed(was, after, id))
        for (const end of endPointsOf(savedElement(after.elements, id))) near.add(end);
    }
    if (again.size > MOST_LAID_AGAIN) return undefined;
  }
  const ranks = rankOf(after.elements);
  const routes = new Map(was);
  const fresh = laid(
    after,
    [...again].sort((a, b) => ranks.get(a)! - ranks.get(b)!),
  );
  for (const id of [...touched.elements, ...again])
    if (!fresh.has(id as ElementId)) routes.delete(id as ElementId);
  for (const [id, route] of fresh) {
    const old = was.get(id);
    routes.set(id, old !== undefined && isSameRoute(old, route) ? old : route);
  }
  return routes;
}

/** Points that stand elsewhere, and those at which something else ends. */
function movedPoints(before: System, after: System, { points, elements }: TouchedRecords): Set<string> {
  const moved = new Set<string>();
  for (const id of points) {
    const [had, has] = [before, after].map((it) =>
      Object.hasOwn(it.points, id) ? completePoint(it.points[id as PointId]!) : undefined,
    );
    if (had?.x !== has?.x || had?.y !== has?.y) moved.add(id);
  }
  for (const id of elements) {
    const [had, has] = [before, after].map((it) => savedElement(it.elements, id));
    const [ended, ends] = [endPointsOf(had), endPointsOf(has)];
    if (had?.kind !== has?.kind || ended.join() !== ends.join())
      for (const point of [...ended, ...ends]) moved.add(point);
  }
  return moved;
}

function isBowed(was: ReadonlyMap<ElementId, Route>, { points, elements }: System, id: string): boolean {
  const { from, to } = savedElement(elements, id) as { from?: string; to?: string };
  if (from === undefined || to === undefined) return false;
  const known = was.get(id as ElementId);
  if (known !== undefined && Math.hypot(known.to!.x - known.from.x, known.to!.y - known.from.y) < TOO_CLOSE)
    return true;
  const [a, b] = [from, to].map((end) =>
    Object.hasOwn(points, end) ? completePoint(points[end as PointId]!) : undefined,
  );
  return a !== undefined && b !== undefined && Math.hypot(b.x - a.x, b.y - a.y) < TOO_CLOSE;
}

/** Whether two routes lie alike, so that what was drawn along one holds for the other. */
export function isSameRoute(a: Route | undefined, b: Route): boolean {
  return (
    a === b ||
    (a !== undefined &&
      isSameSpot(a.from, b.from) &&
      isSameSpot(a.start, b.start) &&
      isSameSpot(a.end, b.end) &&
      isSameSpot(a.to, b.to) &&
      isSameSpot(a.centre, b.centre) &&
      isSameSpot(a.along, b.along) &&
      isSameSpot(a.alt, b.alt) &&
      a.scale === b.scale &&
      isSameLaid(a.laid, b.laid))
  );
}

function isSameLaid(a: LaidPath | undefined, b: LaidPath | undefined): boolean {
  return a === b || (a !== undefined && b !== undefined && JSON.stringify(a) === JSON.stringify(b));
}

const isSameSpot = (a: Spot | undefined, b: Spot | undefined): boolean =>
  a === b || (a !== undefined && b !== undefined && a.x === b.x && a.y === b.y);

const angleOf = (from: Spot, to: Spot): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;

/** Smallest turn between two directions, in degrees, 0 to 180. */
const turn = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

/** Directions in which something may be put: what is preferred is one of them, or the same turned right round. */
const DIRECTIONS = Array.from({ length: 16 }, (_, nth) => -180 + 22.5 * nth);

/** The turn from each of `DIRECTIONS` to the nearest thing that is there: however many there are, it stays as short. */
type Rooms = readonly number[];

const ALL_ROOM: Rooms = DIRECTIONS.map(() => 180);

const narrowed = (rooms: Rooms, angle: number): Rooms =>
  rooms.map((room, nth) => Math.min(room, turn(DIRECTIONS[nth]!, angle)));

const narrower = (a: Rooms = ALL_ROOM, b: Rooms = ALL_ROOM): Rooms =>
  a.map((room, nth) => Math.min(room, b[nth]!));

/** The direction with the most room, near the preferred one where several have enough. */
export const freest = (taken: readonly number[], preferred: number): number =>
  freestIn(taken.reduce(narrowed, ALL_ROOM), preferred);

function freestIn(rooms: Rooms, preferred: number): number {
  const worth = (nth: number) => Math.min(rooms[nth]!, 60) - turn(DIRECTIONS[nth]!, preferred) / 20;
  let best = DIRECTIONS.indexOf(preferred === 180 ? -180 : preferred);
  if (best === -1) throw new RangeError(`${preferred} is none of the directions`);
  DIRECTIONS.forEach((_, nth) => {
    if (worth(nth) > worth(best) + 1e-9) best = nth;
  });
  return DIRECTIONS[best]! === -180 && preferred === 180 ? 180 : DIRECTIONS[best]!;
}

function straight(from: Spot, to: Spot, length: number, aside: number, alt: Spot | undefined): Route {
  const along = spotOf((to.x - from.x) / length, (to.y - from.y) / length);
  const fan = aside === 0 ? Math.min(10, length / 6) : Math.min(30, length / 4);
  const at = (distance: number) =>
    spotOf(from.x + along.x * distance - along.y * aside, from.y + along.y * distance + along.x * aside);
  return {
    from,
    start: at(fan),
    end: at(length - fan),
    to,
    along,
    centre: at(length / 2),
    scale: Math.min(1, (length - 2 * fan) / SYMBOL),
    alt,
  };
}

function bow(from: Spot, to: Spot, degrees: number, alt: Spot | undefined): Route {
  const out = spotOf(Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180));
  const middle = spotOf((from.x + to.x) / 2 + out.x * BOW, (from.y + to.y) / 2 + out.y * BOW);
  // Turned so that the body runs the way the points lie, and the two leads do not cross.
  const way = -out.y * (to.x - from.x) + out.x * (to.y - from.y) < 0 ? -1 : 1;
  const along = spotOf(-out.y * way, out.x * way);
  const half = SYMBOL / 2;
  return {
    from,
    start: spotOf(middle.x - along.x * half, middle.y - along.y * half),
    end: spotOf(middle.x + along.x * half, middle.y + along.y * half),
    to,
    along,
    centre: middle,
    scale: 1,
    alt,
  };
}

function hung(at: Spot, degrees: number, hang: number): Route {
  const along = spotOf(Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180));
  const on = (distance: number) => spotOf(at.x + along.x * distance, at.y + along.y * distance);
  return {
    from: at,
    start: on(hang),
    end: on(hang + SYMBOL),
    to: undefined,
    along,
    centre: on(hang + SYMBOL / 2),
    scale: 1,
    alt: undefined,
  };
}
