import type { DrawingDraft } from "../draft";
import type { Topology } from "./topology";
import type { CimModel } from "./model";
import type { RdfObject } from "./rdf";

/** Lines shorter than this say nothing of the scale [m]. */
const LEAST_METRES_FOR_SCALE = 20;
/** Beyond this spread of the ratios of distances to lengths there is no one scale [1]. */
const MOST_SPREAD = 2;
const WGS84 = /(?:EPSG:+(?:[\d.]*:)?(?:4326|4236)|CRS84)/i;
/** Mean radius of the earth [m]. */
export const EARTH_RADIUS_M = 6371008.8;
const RADIANS = Math.PI / 180;

interface MapSpot {
  readonly x: number;
  readonly y: number;
}

/** Where the points stand: of each terminal's place on its equipment's location, in metres, y downward. */
export function placePoints(model: CimModel, topology: Topology, draft: DrawingDraft): void {
  const raw = new Map<string, MapSpot[]>();
  let isDegrees = false;
  const others = new Set<string>();
  for (const key of topology.equipment) {
    const object = model.byKey(key);
    const location = object === undefined ? undefined : model.target(object, "Location");
    if (object === undefined || location === undefined) continue;
    const system = model.target(location, "CoordinateSystem");
    const crs = system?.attributes.get("crsUrn") ?? "";
    isDegrees ||= WGS84.test(crs);
    if (/EPSG/i.test(crs) && !WGS84.test(crs)) others.add(crs);
    const spots = spotsOf(model, location);
    for (const [index, terminal] of topology.terminalsOf(object).entries()) {
      const node = model.targetKey(terminal, "ConnectivityNode", "TopologicalNode");
      const spot = spots[Math.min(index, spots.length - 1)];
      if (node !== undefined && spot !== undefined) raw.set(node, [...(raw.get(node) ?? []), spot]);
    }
  }
  for (const crs of others) model.ledger.note("approximated", "otherCoordinates", "", { crs });
  if (raw.size === 0) {
    model.ledger.note("assumed", "noPlaces", "");
    return;
  }
  const places = new Map([...raw].map(([key, spots]) => [key, middle(spots)]));
  const flat = isDegrees ? projected(places) : scaled(model, topology, places);
  for (const [key, point] of draft.points) {
    const spot = flat.get(key);
    if (spot !== undefined) point.place = { x: round(spot.x), y: round(spot.y) };
  }
}

const round = (value: number) => Math.round(value * 10) / 10;

function spotsOf(model: CimModel, location: RdfObject): MapSpot[] {
  const numberOf = (it: RdfObject) => model.number(it, "sequenceNumber") ?? 0;
  return [...model.pointingTo(location, "Location")]
    .filter((it) => it.className === "PositionPoint")
    .sort((a, b) => numberOf(a) - numberOf(b))
    .flatMap((it) => {
      const [x, y] = [model.number(it, "xPosition"), model.number(it, "yPosition")];
      return x === undefined || y === undefined ? [] : [{ x, y }];
    });
}

const middle = (spots: readonly MapSpot[]): MapSpot => ({
  x: spots.reduce((sum, it) => sum + it.x, 0) / spots.length,
  y: spots.reduce((sum, it) => sum + it.y, 0) / spots.length,
});

/** Degrees on a plane that touches the earth in the middle of the points, y downward. */
export function projected(places: ReadonlyMap<string, MapSpot>): Map<string, MapSpot> {
  const { x: lon0, y: lat0 } = middle([...places.values()]);
  return new Map(
    [...places].map(([key, { x, y }]) => [
      key,
      {
        x: (x - lon0) * Math.cos(lat0 * RADIANS) * EARTH_RADIUS_M * RADIANS,
        y: -(y - lat0) * EARTH_RADIUS_M * RADIANS,
      },
    ]),
  );
}

/** Drawing units as metres, by what the lengths of the lines say, about the middle of the points, y downward. */
function scaled(
  model: CimModel,
  topology: Topology,
  places: ReadonlyMap<string, MapSpot>,
): Map<string, MapSpot> {
  const ratios: number[] = [];
  for (const line of model.all("ACLineSegment")) {
    const lengthM = model.metres(line, "length") ?? 0;
    const ends = topology
      .terminalsOf(line)
      .map((it) => places.get(model.targetKey(it, "ConnectivityNode", "TopologicalNode") ?? ""));
    const [a, b] = ends;
    if (lengthM < LEAST_METRES_FOR_SCALE || a === undefined || b === undefined) continue;
    const apart = Math.hypot(a.x - b.x, a.y - b.y);
    if (apart > 0) ratios.push(apart / lengthM);
  }
  ratios.sort((a, b) => a - b);
  const at = (share: number) => ratios[Math.min(ratios.length - 1, Math.floor(ratios.length * share))] ?? 1;
  const isToScale = ratios.length > 0 && at(0.75) / at(0.25) < MOST_SPREAD;
  if (!isToScale) model.ledger.note("approximated", "noScale", "");
  const perMetre = isToScale ? at(0.5) : (ratios[ratios.length >> 1] ?? 1);
  const { x: x0, y: y0 } = middle([...places.values()]);
  return new Map(
    [...places].map(([key, { x, y }]) => [key, { x: (x - x0) / perMetre, y: -(y - y0) / perMetre }]),
  );
}
