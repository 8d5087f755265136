import { complete, type StillhotDocument, type System } from "../document";
import type { Assessment } from "../hazard";
import { conductorId, type ElementId, type Letter, lettersOf, type PointId } from "../terms";

/** Which way an element's feed runs: 1 from `from` to `to`. */
export type FeedOf = (id: ElementId, letter: Letter) => 1 | -1 | 0;

/** Nothing is backfed, so no feed has a way to show. */
export const NO_FEED: FeedOf = () => 0;

/**
 * The way along which backfeed runs, for the arrowheads: outward from the elements that reach the backfed conductors,
 * by number of elements passed. Only a picture: the states themselves come from the assessment.
 */
export function feedOf({ system }: StillhotDocument, assessment: Assessment | undefined): FeedOf {
  if (assessment === undefined) return NO_FEED;
  const origins = new Set<ElementId>();
  for (const id in assessment.conductors) {
    const report = assessment.conductors[id as keyof typeof assessment.conductors]!;
    if (report.state === "backfed") for (const source of report.sources) origins.add(source);
  }
  if (origins.size === 0) return NO_FEED;
  const hops = hopsFrom(system, origins, assessment);
  return (id, letter) => {
    const element = complete(system.elements[id]!);
    if (!("from" in element)) return 0;
    const from = hops.get(conductorId(element.from, letter)) ?? hops.get(element.from);
    const to = hops.get(conductorId(element.to, letter)) ?? hops.get(element.to);
    if (from === undefined || to === undefined || from === to) return 0;
    return from < to ? 1 : -1;
  };
}

/** How many elements lie between a point and the nearest origin, along conductors that are backfed. */
function hopsFrom(
  system: System,
  origins: ReadonlySet<ElementId>,
  assessment: Assessment,
): Map<string, number> {
  const beside = new Map<string, string[]>();
  const join = (a: string, b: string) => {
    const list = beside.get(a);
    if (list === undefined) beside.set(a, [b]);
    else list.push(b);
  };
  const isBackfed = (point: string, letter: Letter) =>
    assessment.conductors[conductorId(point, letter)]?.state === "backfed";
  for (const id in system.elements) {
    const element = complete(system.elements[id as ElementId]!);
    if (!("from" in element)) continue;
    if (element.kind === "transformer") {
      join(element.from, element.to);
      join(element.to, element.from);
      continue;
    }
    for (const letter of lettersOf(element.phases)) {
      if (!isBackfed(element.from, letter) || !isBackfed(element.to, letter)) continue;
      if ("open" in element && element.open.includes(letter)) continue;
      join(element.from, element.to);
      join(element.to, element.from);
    }
  }
  const hops = new Map<string, number>();
  let front: string[] = [];
  for (const id of origins) {
    const saved = system.elements[id];
    const element = saved === undefined ? undefined : complete(saved);
    if (element !== undefined && "at" in element) front.push(element.at as PointId);
  }
  for (let hop = 0; front.length > 0; hop++) {
    const next: string[] = [];
    for (const point of front) {
      if (hops.has(point)) continue;
      hops.set(point, hop);
      next.push(...(beside.get(point) ?? []));
    }
    front = next;
  }
  return hops;
}
