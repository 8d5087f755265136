import { ARMS_LENGTH, LARGE_ENOUGH, LEAST_SYMBOL, MANY_ELEMENTS, PART_BY_PART, WORTH_IT } from "./tolerances";
import { type CircuitElement, isBeside, isLine } from "../devices";
import {
  complete,
  completePoint,
  completeStructure,
  elementCountOf,
  endPointsOf,
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
import { type LaidLeg, type LaidPoint, layOut, type Layout, type Plate } from "./layout/layout";
import { endsOfElement, spreadOf, SYMBOL_LENGTH, type Way } from "./layout/inside";
import { clearOfLetter, FLAG_ROOM, isTightAt, labelWidthOf, symbolSizeAt } from "./labels";
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

/** How a drawing that the program lays out lies on a picture. */
export interface Lie {
  readonly way: Way;
  /** how many units of the drawing a pixel of its letters takes */
  readonly text: number;
  /** how much wider than need be the room for what is written is, where the picture has it to spare: one where left out */
  readonly wide?: number;
  /** no line is kept for what is written under symbols, which need the height */
  readonly isLow?: boolean;
}

/** Where everything of a drawing stands. */
export function arrangementOf(document: StillhotDocument, lie: Lie): Arrangement {
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
  return laidOut(document, { ...lie, way: wayOf(system) ?? lie.way });
}

/** Which way the line runs where persons placed structures: the way in which they lie; nothing where they placed none. */
export function wayOf(system: System): Way | undefined {
  if (hasPlacedPoints(system) || !hasPlacedStructures(system)) return undefined;
  const placed = Object.values(system.structures ?? {}).map((it) => completeStructure(it));
  const range = (values: readonly number[]) => Math.max(...values) - Math.min(...values);
  const [wide, high] = [range(placed.map(({ x = 0 }) => x)), range(placed.map(({ y = 0 }) => y))];
  return high > wide ? "down" : "across";
}

/** A drawing is laid out for letters so many times as large beside its symbols as they are where it is not made smaller. */
const TEXTS = [1, 1.25, 1.5, 1.75, 2, 2.25, 3];
/** Where even so symbols could not be read, letters may be so large beside them: it is whole, without many of its words. */
const TIGHTEST = [4];
/**
 * Where the picture is wider than the drawing, what is written has so much more room; where the line runs down a flag stands
 * beside what hangs, and is left some of it.
 */
const WIDER: Readonly<Record<Way, readonly number[]>> = { across: [1.8, 1.3], down: [1.5, 1.3] };
/** Round about a drawing stays free [px]: on a phone less, and there the row of buttons under it is margin enough. */
const MARGIN = 20;
const NARROW = { from: 600, margin: 14 };

/**
 * How a drawing that the program lays out shows its symbols largest in a picture of so much room, with what is written
 * at them beside them.
 *
 * @param room size of the picture [px]
 * @param lettersAt how large letters are drawn at a scale, as a part of their size
 * @param largeEnough length from which on symbols are as large as they have to be [px]
 */
export function bestLie(
  document: StillhotDocument,
  room: { readonly width: number; readonly height: number },
  lettersAt: (scale: number) => number = () => 1,
  largeEnough = LARGE_ENOUGH,
): Lie {
  const { system } = document;
  if (hasPlacedPoints(system)) return { way: "across", text: 1 };
  const own = wayOf(system);
  const isNarrow = room.width < NARROW.from;
  const margin = isNarrow ? NARROW.margin : MARGIN;
  const scaleOf = (lie: Lie) => {
    const box = unionOf(laidOut(document, lie).plates.map((it) => it.box));
    if (box === undefined) return 1;
    const flag = Object.keys(jobOf(document).workPoints).length > 0 && lie.way === "across" ? FLAG_ROOM : 0;
    return Math.min(
      1.5,
      (room.width - 2 * margin) / (box.right - box.left),
      (room.height - (isNarrow ? margin : 2 * margin) - flag) / (box.bottom - box.top),
    );
  };
  const ways: readonly Way[] = own === undefined ? ["across", "down"] : [own];
  const texts = own !== undefined || elementCountOf(system) > MANY_ELEMENTS ? [1] : TEXTS;
  const tried: { readonly lie: Lie; readonly scale: number; readonly worth: number }[] = [];
  const tryAll = (height: { isLow?: true }, among = texts) => {
    for (const way of ways)
      for (const text of among) {
        const lie = { way, text, ...height };
        const scale = scaleOf(lie);
        const size = Math.min(1, symbolLengthAt(lie, scale) / largeEnough);
        // How much of the room that the letters ask for they have: a little less does, since few ask for all of it.
        const roominess = Math.min(1, (1.2 * text * scale) / lettersAt(scale));
        tried.push({ lie, scale, worth: size * 6 + roominess * 5 + Math.min(1, scale) });
        // Larger letters would only make all of it smaller.
        if (size === 1 && roominess === 1) break;
      }
    return tried.reduce((best, it) => (it.worth > best.worth + WORTH_IT ? it : best));
  };
  const named = tryAll({});
  if (texts.length === 1) return named.lie;
  const isSmall = symbolLengthAt(named.lie, named.scale) < ARMS_LENGTH;
  const low = isSmall ? tryAll({ isLow: true }) : named;
  const { lie, scale } = isUnread(low) ? tryAll({ isLow: true }, TIGHTEST) : low;
  // A drawing that is too large to be read whole is read part by part.
  if (isUnread({ lie, scale })) return { way: lie.way, text: PART_BY_PART };
  const wide = WIDER[lie.way].find((it) => scaleOf({ ...lie, wide: it }) > 0.985 * scale);
  return wide === undefined ? lie : { ...lie, wide };
}

const isUnread = ({ lie, scale }: { readonly lie: Lie; readonly scale: number }): boolean =>
  symbolLengthAt(lie, scale) < LEAST_SYMBOL;

/** How long the symbol of a device is drawn [px]. */
export const symbolLengthAt = ({ text }: Pick<Lie, "text">, scale: number): number =>
  SYMBOL_LENGTH * symbolSizeAt(text) * scale;

/** Below this scale a drawing that persons placed point by point is shown as lines alone. */
const LINES_BELOW = 0.3;

/** Whether symbols are too small to be read at a scale: a structure is one mark then. */
export const isAfar = (
  scene: { readonly plates: readonly unknown[]; readonly text: number },
  scale: number,
): boolean => (scene.plates.length === 0 ? scale < LINES_BELOW : symbolLengthAt(scene, scale) < LEAST_SYMBOL);

/** Laid out before for the same things: what only opens or closes stands where it stood. */
const known = new Map<string, { readonly key: string; readonly it: Arrangement }>();

function laidOut(document: StillhotDocument, { way, text, wide = 1, isLow = false }: Lie): Arrangement {
  const key = keyOf(document);
  const name = `${way} ${text} ${wide} ${isLow}`;
  const before = known.get(name);
  if (before?.key === key) return before.it;
  const { system } = document;
  const worked = new Set<string>(Object.values(jobOf(document).workPoints).map(({ at }) => at));
  const label = (id: ElementId) =>
    labelWidthOf(complete(system.elements[id]!), isTightAt(text)) * text * wide;
  const layout = layOut(system, { way, text, wide, isLow, label }, worked);
  let routes: Arrangement["routes"] | undefined;
  const it: Arrangement = {
    layout,
    // Of the many lies that are tried for a picture, one alone is drawn.
    get routes() {
      return (routes ??= laidRoutes(system, layout));
    },
    plates: layout.plates,
    at: (point) => layout.points.get(point),
  };
  known.set(name, { key, it });
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
  const parted = "parted" in element ? element.parted : "";
  const swapped = "toPhases" in element ? element.toPhases : "";
  return `${element.kind} ${endsOfElement(element).join(" ")} ${phases} ${parted} ${swapped} ${labelWidthOf(element)}`;
});

const perElements = perObject((elements: System["elements"]) =>
  Object.keys(elements)
    .map((id) => `${id} ${elementText(savedElement(elements, id)!)}`)
    .join(),
);

function laidRoutes(system: System, layout: Layout): ReadonlyMap<ElementId, Route> {
  const routes = new Map<ElementId, Route>();
  const spreads = new Map<string, number>();
  for (const saved of Object.values(system.elements)) {
    const element = complete(saved);
    if (isLine(element) || !("from" in element)) continue;
    for (const point of endPointsOf(saved))
      spreads.set(point, Math.max(spreads.get(point) ?? 0, spreadOf(element, layout.text)));
  }
  const spreadAt = (point: string) => spreads.get(point) ?? 0;
  for (const [id, leg] of layout.legs) {
    const element = complete(savedElement(system.elements, id)!);
    const route = laidRoute(element, leg, layout, spreadAt);
    if (route !== undefined) routes.set(id, route);
  }
  return routes;
}

function laidRoute(
  element: CircuitElement,
  { path: given, centre, isWithin }: LaidLeg,
  layout: Layout,
  spreadAt: (point: string) => number,
): Route | undefined {
  if (isBeside(element)) return undefined;
  const isAt = "at" in element;
  const third = "alt" in element ? layout.points.get(element.alt) : undefined;
  // The tree may have come to a transfer switch by its third end: this is as its first one then.
  const isByThird = third !== undefined && isSame(given[0]!, third);
  const begin = isByThird ? (element as { alt: string }).alt : endsOfElement(element)[0]!;
  const first = layout.points.get(begin)!;
  const last = isAt ? undefined : layout.points.get((element as { to: string }).to)!;
  // The tree may have come to it from its second point.
  const isTurned = !isAt && !isSame(given[0]!, first);
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
  const axisAt = ({ axis, isAbreast }: LaidPoint): Axis => ({
    way: axis,
    isOnLine: (axis.x === 1) === (layout.way === "across"),
    isAbreast,
  });
  const clear = clearOfLetter(layout.text);
  const laid: LaidPath = {
    spots,
    bodyAt,
    centre,
    body,
    hangs: Math.abs(body.x) > 0.5 !== (layout.way === "across"),
    isWithin,
    isByThird,
    text: layout.text,
    hand: isTurned || isAgainst ? (-hand as 1 | -1) : hand,
    clear: {
      from: clear + spreadAt(begin),
      to: last === undefined ? 0 : clear + spreadAt((element as { to: string }).to),
    },
    ends: { hand, isAt, from: axisAt(first), to: last === undefined ? undefined : axisAt(last) },
  };
  const alt = isByThird ? layout.points.get((element as { from: string }).from) : third;
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

const isSame = (a: Spot, b: Spot): boolean => a.x === b.x && a.y === b.y;

const isOn = (a: Spot, b: Spot, { x, y }: Spot): boolean =>
  Math.min(a.x, b.x) - 0.01 <= x &&
  x <= Math.max(a.x, b.x) + 0.01 &&
  Math.min(a.y, b.y) - 0.01 <= y &&
  y <= Math.max(a.y, b.y) + 0.01;
