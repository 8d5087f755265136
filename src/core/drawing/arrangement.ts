import { type CircuitElement } from "../devices";
import {
  complete,
  completePoint,
  completeStructure,
  elementsAt,
  hasPlacedPoints,
  hasPlacedStructures,
  jobOf,
  perObject,
  savedElement,
  savedPoint,
  type StillhotDocument,
  type System,
} from "../document";
import type { ElementId } from "../terms";
import { layOut, type Layout, type Plate } from "./layout/layout";
import { endsOfElement, spreadOf, type Way } from "./layout/inside";
import { labelWidthOf } from "./labels";
import { type Axis, type LaidPath, type Route, routesOf, spotOf } from "./routes";
import { type Spot, unionOf } from "./shapes";

/** Where everything stands: as persons placed it, or as the program laid it out. */
export interface Arrangement {
  /** nothing where persons placed it */
  readonly layout: Layout | undefined;
  readonly routes: ReadonlyMap<ElementId, Route>;
  readonly plates: readonly Plate[];
  at(point: string): Spot | undefined;
}

/** @param way which way the line runs on the picture where the program lays it out */
export function arrangementOf(document: StillhotDocument, way: Way): Arrangement {
  const { system } = document;
  if (hasPlacedPoints(system))
    return {
      layout: undefined,
      routes: routesOf(system),
      plates: [],
      at(point) {
        const saved = savedPoint(system.points, point);
        return saved === undefined ? undefined : completePoint(saved);
      },
    };
  return laidOut(document, wayOf(system) ?? way);
}

/** Which way the line runs where persons placed structures: the way in which they lie; nothing where they placed none. */
export function wayOf(system: System): Way | undefined {
  if (hasPlacedPoints(system) || !hasPlacedStructures(system)) return undefined;
  const placed = Object.values(system.structures ?? {}).map((it) => completeStructure(it));
  const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const [wide, high] = [range(placed.map(({ x = 0 }) => x)), range(placed.map(({ y = 0 }) => y))];
  return high > wide ? "down" : "across";
}

/**
 * Which way a drawing that the program lays out shows larger in a picture of so much room.
 *
 * @param room size of the picture, in any unit
 */
export function bestWay(
  document: StillhotDocument,
  room: { readonly width: number; readonly height: number },
): Way {
  const own = wayOf(document.system);
  if (own !== undefined || hasPlacedPoints(document.system)) return own ?? "across";
  const scaleOf = (way: Way) => {
    const box = unionOf(laidOut(document, way).plates.map((it) => it.box));
    return box === undefined
      ? 0
      : Math.min(room.width / (box.right - box.left + 40), room.height / (box.bottom - box.top + 60));
  };
  return scaleOf("down") > scaleOf("across") * 1.02 ? "down" : "across";
}

/** Laid out before for the same things: what only opens or closes stands where it stood. */
const known = new Map<Way, { readonly key: string; readonly it: Arrangement }>();

function laidOut(document: StillhotDocument, way: Way): Arrangement {
  const key = keyOf(document);
  const before = known.get(way);
  if (before?.key === key) return before.it;
  const { system } = document;
  const worked = new Set<string>(Object.values(jobOf(document).workPoints).map(({ at }) => at));
  const layout = layOut(system, { way, label: (id) => labelWidthOf(complete(system.elements[id]!)) }, worked);
  const it: Arrangement = {
    layout,
    routes: laidRoutes(system, layout),
    plates: layout.plates,
    at: (point) => layout.points.get(point),
  };
  known.set(way, { key, it });
  return it;
}

/** What a layout depends on, as one comparable text. */
function keyOf(document: StillhotDocument): string {
  const { points, elements } = document.system;
  const pointTexts = perPoints(points);
  const works = Object.values(jobOf(document).workPoints).map(({ at }) => at);
  const places = JSON.stringify(document.system.structures ?? {});
  return `${pointTexts}|${perElements(elements)}|${works.join()}|${places}`;
}

const perPoints = perObject((points: System["points"]) =>
  Object.keys(points)
    .map((id) => {
      const { kind, label } = completePoint(savedPoint(points, id)!);
      return `${id} ${kind} ${label} ${String(savedPoint(points, id)!["on"])}`;
    })
    .join(),
);

const elementText = perObject((saved: NonNullable<ReturnType<typeof savedElement>>) => {
  const element = complete(saved);
  const phases = "phases" in element ? element.phases : "";
  return `${element.kind} ${endsOfElement(element).join(" ")} ${phases} ${labelWidthOf(element)}`;
});

const perElements = perObject((elements: System["elements"]) =>
  Object.keys(elements)
    .map((id) => `${id} ${elementText(savedElement(elements, id)!)}`)
    .join(),
);

function laidRoutes(system: System, layout: Layout): ReadonlyMap<ElementId, Route> {
  const routes = new Map<ElementId, Route>();
  const spreadAt = (point: string) =>
    Math.max(
      0,
      ...(elementsAt(system).get(point) ?? []).map((id) => {
        const element = complete(savedElement(system.elements, id)!);
        return element.kind !== "span" && "from" in element ? spreadOf(element) : 0;
      }),
    );
  for (const [id, { path, centre }] of layout.legs) {
    const element = complete(savedElement(system.elements, id)!);
    const route = laidRoute(element, path, centre, layout, spreadAt);
    if (route !== undefined) routes.set(id, route);
  }
  return routes;
}

function laidRoute(
  element: CircuitElement,
  given: readonly Spot[],
  centre: Spot,
  layout: Layout,
  spreadAt: (point: string) => number,
): Route | undefined {
  if (element.kind === "nearby") return undefined;
  const isAt = "at" in element;
  const ends = endsOfElement(element);
  const first = layout.points.get(ends[0]!)!;
  const last = isAt ? undefined : layout.points.get((element as { to: string }).to)!;
  // The tree may have come to it from its second point.
  const isTurned = !isAt && (given[0]!.x !== first.x || given[0]!.y !== first.y);
  const spots = isTurned ? [...given].reverse() : given;
  const bodyAt = Math.max(
    0,
    spots.slice(1).findIndex((it, nth) => isOn(spots[nth]!, it, centre)),
  );
  const [start, end] = [spots[bodyAt]!, spots[bodyAt + 1]!];
  const length = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const body = spotOf((end.x - start.x) / length, (end.y - start.y) / length);
  const hand = layout.way === "across" ? 1 : -1;
  // A source that stands before its line is drawn from there backward.
  const isAgainst = isAt && body.x * first.axis.x + body.y * first.axis.y < -0.5;
  const axisAt = ({ axis }: { axis: Spot }): Axis => ({
    way: axis,
    isOnLine: (axis.x === 1) === (layout.way === "across"),
  });
  const laid: LaidPath = {
    spots,
    bodyAt,
    centre,
    body,
    hangs: Math.abs(body.x) > 0.5 !== (layout.way === "across"),
    hand: isTurned || isAgainst ? (-hand as 1 | -1) : hand,
    clear: {
      from: 34 + spreadAt(ends[0]!),
      to: last === undefined ? 0 : 34 + spreadAt((element as { to: string }).to),
    },
    ends: { hand, isAt, from: axisAt(first), to: last === undefined ? undefined : axisAt(last) },
  };
  const alt = "alt" in element ? layout.points.get(element.alt) : undefined;
  return {
    from: spots[0]!,
    start,
    end,
    to: last === undefined ? undefined : spots.at(-1)!,
    along: body,
    centre,
    scale: 1,
    alt: alt === undefined ? undefined : spotOf(alt.x, alt.y),
    laid,
  };
}

const isOn = (a: Spot, b: Spot, { x, y }: Spot): boolean =>
  Math.min(a.x, b.x) - 0.01 <= x &&
  x <= Math.max(a.x, b.x) + 0.01 &&
  Math.min(a.y, b.y) - 0.01 <= y &&
  y <= Math.max(a.y, b.y) + 0.01;
