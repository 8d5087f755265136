import { type CircuitElement, deviceOf, type Fields } from "../devices";
import type { JsonObject } from "../terms";
import { perObject } from "./perObject";
import {
  type Point,
  pointFields,
  type SavedElement,
  type SavedPoint,
  type SavedStructure,
  structureFields,
  type StructureRecord,
} from "./types";

/** Fills a saved record's defaults in. What the reader let through fits its field. */
function fill(fields: Fields, saved: JsonObject): Record<string, unknown> {
  const phases = typeof saved["phases"] === "string" ? saved["phases"] : "";
  const record: Record<string, unknown> = {};
  for (const key in fields) {
    const given = fields[key]!.internal ? undefined : saved[key]; // what a file says under such a name is an unknown key
    const reading = given === undefined ? undefined : fields[key]!.read(given, { phases });
    record[key] = reading !== undefined && "value" in reading ? reading.value : fields[key]!.fallback;
  }
  return record;
}

const filled = perObject((saved: SavedElement) => ({
  ...fill(deviceOf(saved.kind).fields, saved),
  kind: saved.kind,
})) as (saved: SavedElement) => CircuitElement;

/** Elements as an upset leaves them: what it changes may be nothing that a file can say. */
const upset = new WeakMap<SavedElement, CircuitElement>();

/** An element with every default filled in; the same object for the same saved record. */
export const complete = (saved: SavedElement): CircuitElement => upset.get(saved) ?? filled(saved);

/** A record for an element after a change of some keys, internal ones among them, which no file may set. */
export function changed(saved: SavedElement, change: Readonly<Record<string, unknown>>): SavedElement {
  const { fields } = deviceOf(saved.kind);
  const shown = Object.fromEntries(Object.entries(change).filter(([key]) => fields[key]?.internal !== true));
  const record = { ...saved, ...shown } as SavedElement;
  upset.set(record, { ...complete(saved), ...change });
  return record;
}

/** A point with every default filled in; the same object for the same saved record. */
export const completePoint: (saved: SavedPoint) => Point = perObject(
  (saved: SavedPoint) => fill(pointFields, saved) as unknown as Point,
);

/** A structure with every default filled in; the same object for the same saved record. */
export const completeStructure: (saved: SavedStructure) => StructureRecord = perObject(
  (saved: SavedStructure) => fill(structureFields, saved) as unknown as StructureRecord,
);
