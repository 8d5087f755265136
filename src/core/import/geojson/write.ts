import { complete, type SavedElement, type StillhotDocument } from "../../document";
import { deviceOf, type Fields, isBeside, isLine, lengthOf } from "../../devices";
import type { Json, JsonObject } from "../../terms";
import type { Ledger } from "../ledger";
import { EARTH_RADIUS_M } from "../cim/places";
import { propertyOf } from "./keys";
import { notCarried } from "../notCarried";

const DEGREES_A_METRE = 180 / Math.PI / EARTH_RADIUS_M;
/** Decimals of a degree that are a tenth of a millimetre. */
const DECIMALS = 1e9;

/** Ends in the order in which a map names them, and the property of each. */
const ENDS = { from: "from_id", to: "to_id", alt: "alt_id", at: "on" } as const;

/** Keys that the map says in other words. */
const SAID_OTHERWISE = new Set(["kind", "on", "lengthM"]);

/**
 * A drawing as a map of RFC 7946, in the convention of docs/import.md. Places are metres about 0° and 0°: a drawing knows no
 * place on earth. What the map does not carry stands in the ledger.
 */
export function writeMap(document: StillhotDocument, ledger: Ledger): string {
  const { system, title } = document;
  notCarried(document, ledger);
  const isPlaced = Object.values(system.points).some((it) => it["x"] !== undefined || it["y"] !== undefined);
  ledger.note("approximated", isPlaced ? "placesAboutZero" : "placesNone", "");
  const place = (id: string): [number, number] | undefined => {
    const point = (system.points as Readonly<Record<string, JsonObject>>)[id];
    if (!isPlaced || point === undefined) return undefined;
    return [degrees(Number(point["x"] ?? 0)), degrees(-Number(point["y"] ?? 0))];
  };
  const features = [
    ...Object.entries(system.points).map(([id, point]) => ({
      type: "Feature",
      id,
      geometry: geometryOf([place(id)]),
      properties: {
        class: point["kind"] ?? "pole",
        ...defined({
          label: point["label"],
          earth_ohms: point["earthOhms"],
          evidence: point["evidence"],
        }),
      },
    })),
    ...Object.entries(system.elements).flatMap(([id, saved]) => {
      if (isBeside(saved)) {
        ledger.note("leftOut", "nearbyLost", id);
        return [];
      }
      const ends = Object.values(endsOf(saved));
      const isClash = Object.hasOwn(system.points, id);
      if (isClash) ledger.note("approximated", "idShared", id);
      return [
        {
          type: "Feature",
          id: isClash ? `${id.slice(0, 33)}-device` : id,
          geometry: geometryOf(isLine(saved) ? ends.map(place) : [place(ends[0]!)]),
          properties: { ...standing(saved), ...tableOf(saved, ledger, id) },
        },
      ];
    }),
  ];
  const collection = {
    type: "FeatureCollection",
    stillhot: { convention: 1, title, frequencyHz: system.frequencyHz },
    features,
  };
  return `${JSON.stringify(collection, null, 1)}\n`;
}

const degrees = (metres: number): number => Math.round(metres * DEGREES_A_METRE * DECIMALS) / DECIMALS;

function geometryOf(places: readonly ([number, number] | undefined)[]): JsonObject | null {
  if (places.some((it) => it === undefined)) return null;
  return places.length === 1
    ? { type: "Point", coordinates: places[0]! }
    : { type: "LineString", coordinates: places as [number, number][] };
}

/** The points at an element's ends, by their properties. */
const endsOf = (saved: SavedElement): Readonly<Record<string, string>> =>
  Object.fromEntries(
    Object.entries(ENDS)
      .filter(([end]) => (deviceOf(saved.kind).ends as readonly string[]).includes(end))
      .map(([end, property]) => [property, String(saved[end])]),
  );

/** Where a feature stands and what it is. */
function standing(saved: SavedElement): JsonObject {
  return isLine(saved)
    ? { class: "span", ...endsOf(saved), length_m: lengthOf(complete(saved)) }
    : { class: "device", device: saved.kind, ...endsOf(saved) };
}

/** The keys of a record as cells of a table: texts, numbers, yes and no; a list is spelled as text. */
function tableOf(saved: SavedElement, ledger: Ledger, id: string): JsonObject {
  const fields: Fields = deviceOf(saved.kind).fields;
  const ends: readonly string[] = deviceOf(saved.kind).ends;
  const cells: Record<string, Json> = {};
  for (const [key, value] of Object.entries(saved)) {
    if (value === undefined) continue;
    const isRunning = key === "on" && typeof value === "boolean";
    if ((SAID_OTHERWISE.has(key) && !isRunning) || ends.includes(key)) continue;
    if (fields[key] === undefined) ledger.note("leftOut", "unknownKey", id);
    else Object.assign(cells, cellsOf(key, value, String(saved["phases"] ?? "")));
  }
  return cells;
}

/** What a key is in a table: mostly one cell. */
function cellsOf(key: string, value: Json, phases: string): JsonObject {
  const pair = value as readonly number[];
  switch (key) {
    case "fuse":
      return { fuse: typeof value === "string" ? value : linkWord(value as JsonObject) };
    case "normallyOpen":
      return value === true ? { normal: "open" } : {};
    case "taps":
      return Object.fromEntries(
        Object.entries(value as JsonObject).map(([letter, tap]) => [`tap_${letter.toLowerCase()}`, tap!]),
      );
    case "z1Ohms":
      return { z1_r: pair[0]!, z1_x: pair[1]! };
    case "z0Ohms":
      return { z0_r: pair[0]!, z0_x: pair[1]! };
    default:
      return { [propertyOf(key)]: cellOf(key, value, phases) };
  }
}

/** All phases of a thing are its letters, in a table that has no other way to say so. */
const ALL_PHASES = new Set(["open", "blown", "removed", "cut", "parted", "failed"]);
const cellOf = (key: string, value: Json, phases: string): Json =>
  ALL_PHASES.has(key) && value === true ? phases : typeof value === "object" ? JSON.stringify(value) : value;

const linkWord = ({ amps, type }: JsonObject): string => `${String(amps)}${String(type)}`;

const defined = (cells: Readonly<Record<string, Json | undefined>>): JsonObject =>
  Object.fromEntries(Object.entries(cells).filter((cell): cell is [string, Json] => cell[1] !== undefined));
