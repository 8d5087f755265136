import type { Json, JsonObject } from "../terms";
import type { SavedElement, SavedPoint, SavedStructure, System } from "./types";

/** Changes to a drawing: what is added, which keys have another value, what is not there. */
export interface Amendment {
  readonly add?: {
    readonly structures?: Readonly<Record<string, SavedStructure>>;
    readonly points?: Readonly<Record<string, SavedPoint>>;
    readonly elements?: Readonly<Record<string, SavedElement>>;
  };
  /** of elements, points and structures; `null` takes a key away, so that its default holds */
  readonly set?: Readonly<Record<string, JsonObject>>;
  readonly remove?: readonly string[];
}

/** A drawing with some changes made to it, not checked: whoever asks knows that they fit, or has it checked. */
export function amended(system: System, amendments: readonly Amendment[]): System {
  const structures: Record<string, SavedStructure> = { ...system.structures };
  const points: Record<string, SavedPoint> = { ...system.points };
  const elements: Record<string, SavedElement> = { ...system.elements };
  const maps: readonly Record<string, JsonObject>[] = [elements, points, structures];
  for (const { add, set, remove } of amendments) {
    Object.assign(structures, add?.structures);
    Object.assign(points, add?.points);
    Object.assign(elements, add?.elements);
    for (const [id, keys] of Object.entries(set ?? {})) {
      const map = maps.find((it) => Object.hasOwn(it, id));
      if (map !== undefined) map[id] = withValues(map[id]!, keys);
    }
    for (const id of remove ?? []) for (const map of maps) delete map[id];
  }
  const named = system.structures !== undefined || Object.keys(structures).length > 0 ? { structures } : {};
  return { ...system, ...named, points, elements } as System;
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
  ...Object.keys(add?.structures ?? {}),
  ...Object.keys(add?.points ?? {}),
  ...Object.keys(add?.elements ?? {}),
  ...Object.keys(set ?? {}),
  ...(remove ?? []),
];
