import { MOST_REVISED } from "./tolerances";
import { ReadableMap } from "./readableMap";

/** A map with a few entries put in place of others, added or (`undefined`) taken away, without copying a large one. */
export function revised<Key, Value>(
  map: ReadonlyMap<Key, Value>,
  revisions: ReadonlyMap<Key, Value | undefined>,
): ReadonlyMap<Key, Value> {
  if (revisions.size === 0) return map;
  const [base, earlier] = map instanceof RevisedMap ? (map as RevisedMap<Key, Value>).parts() : [map, []];
  const all = new Map([...earlier, ...revisions]);
  const after = new RevisedMap(base, all);
  return all.size > MOST_REVISED ? new Map(after) : after;
}

class RevisedMap<Key, Value> extends ReadableMap<Key, Value> {
  readonly size: number;
  readonly #base: ReadonlyMap<Key, Value>;
  readonly #revisions: ReadonlyMap<Key, Value | undefined>;

  constructor(base: ReadonlyMap<Key, Value>, revisions: ReadonlyMap<Key, Value | undefined>) {
    super();
    this.#base = base;
    this.#revisions = revisions;
    let size = base.size;
    for (const [key, value] of revisions) size += (value === undefined ? 0 : 1) - (base.has(key) ? 1 : 0);
    this.size = size;
  }

  parts(): readonly [ReadonlyMap<Key, Value>, ReadonlyMap<Key, Value | undefined>] {
    return [this.#base, this.#revisions];
  }

  get(key: Key): Value | undefined {
    return this.#revisions.has(key) ? this.#revisions.get(key) : this.#base.get(key);
  }

  /** What took the place of another in its place, then what was added. */
  *keys(): MapIterator<Key> {
    const isGone = (key: Key) => this.#revisions.has(key) && this.#revisions.get(key) === undefined;
    for (const key of this.#base.keys()) if (!isGone(key)) yield key;
    for (const [key, value] of this.#revisions) if (value !== undefined && !this.#base.has(key)) yield key;
  }
}
