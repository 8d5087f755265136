import { isObject, type Json, type JsonObject } from "../../terms";
import type { Ledger } from "../ledger";

/** A longitude and a latitude [°]. */
export type Position = readonly [lon: number, lat: number];

/** One feature of a map: what it is, where, and what its table says of it. */
export interface Feature {
  readonly id: string;
  readonly className: string;
  /** vertices of a line, or the one place of a point */
  readonly places: readonly Position[];
  readonly properties: JsonObject;
}

/** A cell of a table: nothing where it is empty, since a table has no other way to say so. */
export function cell(properties: JsonObject, key: string): string | number | boolean | undefined {
  const value = properties[key];
  return value === undefined || value === null || value === "" || typeof value === "object"
    ? undefined
    : value;
}

/** A property as text; nothing where the feature does not have it or leaves it empty. */
export const text = (properties: JsonObject, key: string): string | undefined => {
  const value = cell(properties, key);
  return value === undefined ? undefined : String(value);
};

/** A number, written as one or as text; anything else is an error. */
export function number(feature: Feature, key: string, ledger: Ledger): number | undefined {
  const value = cell(feature.properties, key);
  if (value === undefined) return undefined;
  const parsed = typeof value === "number" ? value : Number(String(value).trim());
  if (Number.isFinite(parsed) && typeof value !== "boolean") return parsed;
  ledger.error("importing.error.cell", { id: feature.id, key, found: String(value), expected: "1.5" });
  return undefined;
}

const YES = ["true", "1", "yes", "y"];
const NO = ["false", "0", "no", "n"];

/** Yes or no in any of the words that tables use; anything else is an error. */
export function flag(feature: Feature, key: string, ledger: Ledger): boolean | undefined {
  const value = cell(feature.properties, key);
  if (value === undefined) return undefined;
  const word = String(value).trim().toLowerCase();
  if (YES.includes(word)) return true;
  if (NO.includes(word)) return false;
  ledger.error("importing.error.cell", {
    id: feature.id,
    key,
    found: String(value),
    expected: "true, false, yes, no, 1, 0",
  });
  return undefined;
}

/** The features of a collection of RFC 7946, each checked for its id and its places. */
export function featuresOf(value: JsonObject, ledger: Ledger): Feature[] {
  const list = value["features"];
  if (!Array.isArray(list)) return [];
  const features = new Map<string, Feature>();
  for (const [index, item] of (list as readonly Json[]).entries()) {
    if (!isObject(item)) continue;
    const properties = isObject(item["properties"]) ? item["properties"] : {};
    const id = item["id"] ?? properties["id"];
    if (typeof id !== "string" && typeof id !== "number") {
      ledger.error("importing.error.featureId", { number: index + 1 });
      continue;
    }
    const feature: Feature = {
      id: String(id),
      className: text(properties, "class") ?? "",
      places: placesOf(item["geometry"] as Json, String(id), ledger),
      properties,
    };
    if (features.has(feature.id)) ledger.error("importing.error.featureTwice", { id: feature.id });
    features.set(feature.id, feature);
  }
  return [...features.values()];
}

function placesOf(geometry: Json, id: string, ledger: Ledger): Position[] {
  if (!isObject(geometry)) return [];
  const { type, coordinates } = geometry;
  const list: Json | undefined =
    type === "Point"
      ? [coordinates ?? null]
      : type === "MultiLineString"
        ? (coordinates as readonly Json[])?.[0]
        : type === "LineString"
          ? coordinates
          : [];
  if (type === "MultiLineString" && (coordinates as readonly Json[]).length > 1)
    ledger.error("importing.error.parts", { id });
  const places: Position[] = [];
  for (const position of Array.isArray(list) ? (list as readonly Json[]) : []) {
    const [lon, lat] = (Array.isArray(position) ? position : []) as readonly Json[];
    const isDegrees =
      typeof lon === "number" && typeof lat === "number" && Math.abs(lon) <= 180 && Math.abs(lat) <= 90;
    if (!isDegrees) {
      ledger.error("importing.error.position", { id, found: JSON.stringify(position) });
      return [];
    }
    places.push([lon, lat]);
  }
  return places;
}
