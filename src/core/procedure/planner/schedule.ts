import { elementsOfKind, structureOf, type System } from "../../document";
import { MOST_WALKS } from "../tolerances";
import { compareRanks } from "./breaking";
import { distanceBetween } from "./distance";
import type { PlannedStep } from "./types";

/** Steps that stand together, and what has to be done before them. */
export interface PlannedGroup {
  readonly steps: readonly PlannedStep[];
  /** what comes before it; all of it is scheduled too */
  readonly after: readonly PlannedGroup[];
  /** of what can be done next where one stands, the lowest goes first */
  readonly rank: number;
  /** where it is done; anywhere without it */
  readonly at?: string;
}

/**
 * Puts actions in an order that keeps every precedence: all that can be done where one stands is done before one walks on,
 * so that there are as few visits as can be, then as little walking; at one place by rank, then as they were told.
 *
 * Exact as long as no more than `MOST_WALKS` beginnings stand side by side: a job at five or six places.
 *
 * @throws Error when they wait for each other in a circle: a mistake of the planner, never of a drawing
 */
export function inOrder(system: System, actions: readonly PlannedGroup[]): PlannedStep[] {
  const placed = actions.map((it): Placed => ({
    ...it,
    it,
    place: it.at === undefined ? undefined : (structureOf(system, it.at)?.id ?? it.at),
  }));
  let walks: readonly Walk[] = [stay({ done: new Set(), far: 0 }, placed)];
  while (walks.length > 0) {
    const ended = walks.filter(({ done }) => done.size === actions.length);
    if (ended.length > 0) return [...nearest(ended).done].flatMap(({ steps }) => steps);
    walks = mostDone(
      walks.flatMap((walk) => onward(system, walk, placed)),
      placed,
    );
  }
  throw new Error(`a circle of ${actions.map(({ steps: [first] }) => first?.do).join(", ")}`);
}

interface Placed extends PlannedGroup {
  readonly it: PlannedGroup;
  /** the structure it is on */
  readonly place: string | undefined;
}

/** The beginning of an order. */
interface Walk {
  /** in the order in which it was done */
  readonly done: ReadonlySet<PlannedGroup>;
  readonly here?: Placed;
  readonly far: number;
}

const isReady = ({ done }: Walk, { it, after }: Placed): boolean =>
  !done.has(it) && after.every((first) => done.has(first));

/** A walk with all done that can be done where one stands, or anywhere. */
function stay(walk: Walk, actions: readonly Placed[]): Walk {
  const done = new Set(walk.done);
  const isHere = ({ place }: Placed): boolean => place === undefined || place === walk.here?.place;
  for (;;) {
    const ready = actions.filter((it) => isHere(it) && isReady({ ...walk, done }, it));
    if (ready.length === 0) return { ...walk, done };
    done.add(ready.reduce((first, it) => (it.rank < first.rank ? it : first)).it);
  }
}

/** A walk gone on to each place at which something can be done: that of the lowest rank first, then the nearest. */
function onward(system: System, walk: Walk, actions: readonly Placed[]): Walk[] {
  const first = new Map<string | undefined, Placed>();
  for (const it of actions)
    if (isReady(walk, it) && !((first.get(it.place)?.rank ?? Infinity) <= it.rank)) first.set(it.place, it);
  return [...first.values()]
    .map((here) => ({
      here,
      way: distanceBetween(system, walk.here?.at ?? stationOf(system), here.at!),
    }))
    .sort((a, b) => compareRanks([a.here.rank, a.way], [b.here.rank, b.way]))
    .map(({ here, way }) => stay({ ...walk, here, far: walk.far + way }, actions));
}

/** Where the first source stands: from there a crew comes to the line. */
const stationOf = (system: System): string => elementsOfKind(system, "source")[0]?.[1].at ?? "";

/** Of walks that did the same and stand at one place the shortest; of too many those that have the least before them. */
function mostDone(walks: readonly Walk[], actions: readonly Placed[]): readonly Walk[] {
  const alike = new Map<string, Walk[]>();
  for (const walk of walks) {
    const key = `${walk.here?.place} ${actions.map(({ it }) => (walk.done.has(it) ? 1 : 0)).join("")}`;
    alike.set(key, [...(alike.get(key) ?? []), walk]);
  }
  const shortest = [...alike.values()].map(nearest);
  if (shortest.length <= MOST_WALKS) return shortest;
  return shortest
    .map((walk) => {
      const left = actions.filter(({ it }) => !walk.done.has(it));
      return { walk, rank: [new Set(left.map(({ place }) => place)).size, left.length, walk.far] };
    })
    .sort((a, b) => compareRanks(a.rank, b.rank))
    .slice(0, MOST_WALKS)
    .map(({ walk }) => walk);
}

/** The shortest walk; of equal ones the first. */
const nearest = (walks: readonly Walk[]): Walk =>
  walks.reduce((best, walk) => (walk.far < best.far ? walk : best));
