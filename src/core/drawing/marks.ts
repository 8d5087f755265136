import { LEAST_WATTS } from "./tolerances";
import { isLine, isBeside } from "../devices";
import { complete, type StillhotDocument } from "../document";
import type { Assessment } from "../hazard";
import type { ElementId, PointId } from "../terms";
import { powerInto } from "./power";
import type { Scene } from "./scene";

/** A margin as a mark tells it: a strength, or that nothing was found up to strength 3. */
export type MarginName = "0" | "1" | "2" | "3" | "none";

/** What a view lays over a drawing. Marks keep their size on the screen; the first of two that would overlap stays. */
export type ViewMark =
  | { readonly mark: "margin"; readonly x: number; readonly y: number; readonly margin: MarginName }
  | {
      readonly mark: "step";
      readonly x: number;
      readonly y: number;
      readonly n: number;
      /** the walk has come this far */
      readonly isHere: boolean;
    }
  | {
      readonly mark: "power";
      readonly x: number;
      readonly y: number;
      /** the way that the power flows, a unit vector */
      readonly dx: number;
      readonly dy: number;
      readonly watts: number;
      readonly element: ElementId;
    };

/** What a margin is shown as, the worst first: things that must go wrong, up to three, or no way found. */
export const MARGIN_NAMES: readonly MarginName[] = ["0", "1", "2", "3", "none"];

/** One outline for each margin in a box of 24, so that the shape alone tells them apart. */
export const MARGIN_OUTLINES: Readonly<Record<MarginName, string>> = {
  "0": "M8 1H16L23 8V16L16 23H8L1 16V8Z",
  "1": "M12 0L25 23H-1Z",
  "2": "M12 -1L25 12L12 25L-1 12Z",
  "3": "M12 1A11 11 0 1 1 11.99 1Z",
  none: "M-9 2H33V22H-9Z",
};

/** A margin as one of those; `null` is no way found. */
export const marginName = (margin: number | null): MarginName =>
  margin === null ? "none" : (String(Math.min(3, Math.max(0, margin))) as MarginName);

/** One mark a point, worst first. */
export function marginMarks(scene: Scene, margins: Readonly<Record<PointId, number | null>>): ViewMark[] {
  return Object.entries(margins)
    .sort(([, a], [, b]) => (a ?? 9) - (b ?? 9))
    .flatMap(([id, margin]): ViewMark[] => {
      const [x, y] = scene.points.get(id as PointId)?.spine ?? [];
      return x === undefined || y === undefined ? [] : [{ mark: "margin", x, y, margin: marginName(margin) }];
    });
}

/** The steps of a path in their order, each on its element. */
export function stepMarks(scene: Scene, path: readonly ElementId[], here: number): ViewMark[] {
  return path.flatMap((id, index): ViewMark[] => {
    const centre = scene.routes.get(id)?.centre;
    return centre === undefined
      ? []
      : [{ mark: "step", x: centre.x, y: centre.y, n: index + 1, isHere: index === here }];
  });
}

/**
 * Where somebody is to look, by rank: one mark for each place, where the first thing of it stands.
 *
 * @param places of each line of the list, the first first: the place, and the thing or point that one looks at there
 */
export function lookMarks(
  scene: Scene,
  places: readonly { readonly place: string; readonly where: ElementId | PointId }[],
): ViewMark[] {
  return [...numbered(places.map(({ place }) => place))].flatMap(([place, n]): ViewMark[] => {
    const { where } = places.find((it) => it.place === place)!;
    const { x, y } = placeOf(scene, where) ?? {};
    return x === undefined || y === undefined ? [] : [{ mark: "step", x, y, n, isHere: n === 1 }];
  });
}

/** Each different thing and which one it is, from 1. */
export const numbered = (things: readonly string[]): ReadonlyMap<string, number> =>
  new Map([...new Set(things)].map((it, nth) => [it, nth + 1]));

function placeOf(scene: Scene, where: ElementId | PointId): { x: number; y: number } | undefined {
  const [x, y] = scene.points.get(where as PointId)?.spine ?? [];
  return x === undefined || y === undefined ? scene.routes.get(where as ElementId)?.centre : { x, y };
}

/** Which way real power flows through each device, most first. Lines between devices carry what their devices do. */
export function powerMarks(document: StillhotDocument, assessment: Assessment, scene: Scene): ViewMark[] {
  const marks: (ViewMark & { mark: "power" })[] = [];
  for (const [id, route] of scene.routes) {
    const element = complete(document.system.elements[id]!);
    if (isLine(element) || isBeside(element)) continue;
    const power = powerInto(document, assessment, id);
    if (power === undefined || Math.abs(power.watts) < LEAST_WATTS) continue;
    const away = Math.sign(power.watts);
    const hung = { x: route.centre.x - route.from.x, y: route.centre.y - route.from.y };
    const length = Math.hypot(hung.x, hung.y) || 1;
    const along = route.to === undefined ? { x: hung.x / length, y: hung.y / length } : route.along;
    marks.push({
      mark: "power",
      x: route.centre.x,
      y: route.centre.y,
      dx: along.x * away,
      dy: along.y * away,
      watts: power.watts,
      element: id,
    });
  }
  return marks.sort((a, b) => Math.abs(b.watts) - Math.abs(a.watts));
}
