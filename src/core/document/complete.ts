import { type CircuitElement, deviceOf, type Fields } from "../devices";
import type { JsonObject } from "../terms";
import { perObject } from "./perObject";
import { type Point, pointFields, type SavedElement, type SavedPoint } from "./types";

/** Fills a saved record's defaults in. What the reader let through fits its field. */
function fill(fields: Fields, saved: JsonObject): Record<string, unknown> {
  const phases = typeof saved["phases"] === "string" ? saved["phases"] : "";
  const record: Record<string, unknown> = {};
  for (const key in fields) {
    const given = saved[key];
    const reading = given === undefined ? undefined : fields[key]!.read(given, { phases });
    record[key] = reading !== undefined && "value" in reading ? reading.value : fields[key]!.fallback;
  }
  return record;
}

/** An element with every default filled in; the same object for the same saved record. */
export const complete: (saved: SavedElement) => CircuitElement = perObject((saved: SavedElement) => ({
  ...fill(deviceOf(saved.kind).fields, saved),
  kind: saved.kind,
})) as (saved: SavedElement) => CircuitElement;

/** A point with every default filled in; the same object for the same saved record. */
export const completePoint: (saved: SavedPoint) => Point = perObject(
  (saved: SavedPoint) => fill(pointFields, saved) as unknown as Point,
);
