import { isTransformer } from "../devices";
import {
  complete,
  elementsAt,
  endPointsOf,
  savedElement,
  type StillhotDocument,
  type System,
} from "../document";
import type { Assessment } from "../hazard";
import { type ElementId, lettersOf } from "../terms";
import { type Looks, pointOf } from "./looks";

/** Which way an element's feed runs: 1 from `from` to `to`. */
export type FeedOf = (id: ElementId) => 1 | -1 | 0;

/** Nothing is backfed, so no feed has a way to show. */
export const NO_FEED: FeedOf = () => 0;

/**
 * The way along which backfeed runs, for the arrowheads: outward from the elements that reach the backfed conductors,
 * by number of elements passed. Only a picture: the states themselves come from the assessment.
 */
export function feedOf(
  { system }: StillhotDocument,
  assessment: Assessment | undefined,
  looks: Looks,
): FeedOf {
  if (assessment === undefined || looks.backfed.size === 0) return NO_FEED;
  const origins = new Set<ElementId>();
  for (const id of looks.backfed)
    for (const source of assessment.conductors[id]!.sources) origins.add(source);
  const hops = hopsFrom(system, origins, looks);
  const backfed = new Set([...looks.backfed].map(pointOf));
  return (id) => {
    const element = complete(system.elements[id]!);
    if (!("from" in element) || !(backfed.has(element.from) || backfed.has(element.to))) return 0;
    const from = hops.get(element.from);
    const to = hops.get(element.to);
    if (from === undefined || to === undefined || from === to) return 0;
    return from < to ? 1 : -1;
  };
}

/** How many elements lie between a point and the nearest origin, along conductors that are backfed. */
function hopsFrom(system: System, origins: ReadonlySet<ElementId>, looks: Looks): Map<string, number> {
  const hops = new Map<string, number>();
  let front: string[] = [];
  for (const id of origins) {
    const saved = savedElement(system.elements, id);
    const element = saved === undefined ? undefined : complete(saved);
    if (element !== undefined && "at" in element) front.push(element.at);
  }
  for (let hop = 0; front.length > 0; hop++) {
    const next: string[] = [];
    for (const point of front) {
      if (hops.has(point)) continue;
      hops.set(point, hop);
      next.push(...besideOf(system, looks, point));
    }
    front = next;
  }
  return hops;
}

/** Points to which backfeed comes from a point past one element. */
function besideOf(system: System, looks: Looks, point: string): string[] {
  return (elementsAt(system).get(point) ?? []).flatMap((id) => {
    const element = complete(savedElement(system.elements, id)!);
    if (isTransformer(element)) return endPointsOf(element).filter((it) => it !== point);
    if (!("from" in element) || (element.from !== point && element.to !== point)) return [];
    const other = element.from === point ? element.to : element.from;
    const isJoined = lettersOf(element.phases).some(
      (letter) =>
        looks.at(element.from, letter) === "backfed" &&
        looks.at(element.to, letter) === "backfed" &&
        !("open" in element && element.open.includes(letter)),
    );
    return isJoined ? [other] : [];
  });
}
