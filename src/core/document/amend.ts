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

/**
 * A drawing with some changes made to it, not checked: whoever asks knows that they fit, or has it checked. What no change is
 * about stays the very object that it was, so that what was worked out of it still holds.
 */
export function amended(system: System, amendments: readonly Amendment[]): System {
  const structures = new Amended<SavedStructure>(system.structures ?? {});
  const points = new Amended<SavedPoint>(system.points);
  const elements = new Amended<SavedElement>(system.elements);
  const maps = [elements, points, structures];
  for (const { add, set, remove } of amendments) {
    structures.add(add?.structures);
    points.add(add?.points);
    elements.add(add?.elements);
    for (const [id, keys] of Object.entries(set ?? {})) maps.find((it) => it.has(id))?.set(id, keys);
    for (const id of remove ?? []) for (const map of maps) map.remove(id);
  }
  const named =
    system.structures !== undefined || Object.keys(structures.records).length > 0
      ? { structures: structures.records }
      : {};
  return { ...system, ...named, points: points.records, elements: elements.records };
}

/** Records of a drawing, copied once before the first of them is changed. */
class Amended<Saved extends JsonObject> {
  private readonly given: Readonly<Record<string, Saved>>;
  private own: Record<string, Saved> | undefined;

  constructor(given: Readonly<Record<string, Saved>>) {
    this.given = given;
  }

  get records(): Readonly<Record<string, Saved>> {
    return this.own ?? this.given;
  }

  private get copy(): Record<string, Saved> {
    return (this.own ??= { ...this.given });
  }

  has(id: string): boolean {
    return Object.hasOwn(this.records, id);
  }

  add(more: Readonly<Record<string, Saved>> | undefined): void {
    if (more !== undefined && Object.keys(more).length > 0) Object.assign(this.copy, more);
  }

  set(id: string, keys: JsonObject): void {
    this.copy[id] = withValues(this.records[id]!, keys);
  }

  remove(id: string): void {
    if (this.has(id)) delete this.copy[id];
  }
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
