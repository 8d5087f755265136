import type { Json, JsonObject } from "../terms";
import type { SavedElement, SavedPoint, System } from "./types";

/** Changes to a drawing: what is added, which keys have another value, what is not there. */
export interface Amendment {
  readonly add?: {
    readonly points?: Readonly<Record<string, SavedPoint>>;
    readonly elements?: Readonly<Record<string, SavedElement>>;
  };
  /** of elements and points; `null` takes a key away, so that its default holds */
  readonly set?: Readonly<Record<string, JsonObject>>;
  readonly remove?: readonly string[];
}

/** A drawing with some changes made to it, not checked: whoever asks knows that they fit, or has it checked. */
export function amended(system: System, amendments: readonly Amendment[]): System {
  const points: Record<string, SavedPoint> = { ...system.points };
  const elements: Record<string, SavedElement> = { ...system.elements };
  for (const { add, set, remove } of amendments) {
    Object.assign(points, add?.points);
    Object.assign(elements, add?.elements);
    for (const [id, keys] of Object.entries(set ?? {})) {
      if (Object.hasOwn(elements, id)) elements[id] = withValues(elements[id]!, keys);
      else if (Object.hasOwn(points, id)) points[id] = withValues(points[id]!, keys);
    }
    for (const id of remove ?? []) {
      delete elements[id];
      delete points[id];
    }
  }
  return { ...system, points, elements } as System;
}

function withValues<Saved extends JsonObject>(saved: Saved, keys: JsonObject): Saved {
  const record: Record<string, Json | undefined> = { ...saved };
  for (const [key, value] of Object.entries(keys))
    if (value === null) delete record[key];
    else record[key] = value;
  return record as Saved;
}

/** Everything that a change is about: what it adds, sets or removes. */
export const idsOf = ({ add, set, remove }: Amendment): string[] => [
  ...Object.keys(add?.points ?? {}),
  ...Object.keys(add?.elements ?? {}),
  ...Object.keys(set ?? {}),
  ...(remove ?? []),
];
