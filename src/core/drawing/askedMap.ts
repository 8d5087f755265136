import { ReadableMap } from "./readableMap";

/** A map whose values are made when they are first asked for, each once. */
export class AskedMap<Key extends string, Value> extends ReadableMap<Key, Value> {
  readonly size: number;
  readonly #records: Readonly<Record<string, unknown>>;
  readonly #make: (key: Key) => Value;
  readonly #made = new Map<Key, Value>();

  /**
   * @param records what has the keys of the map, each its own
   * @param size how many these are
   */
  constructor(records: Readonly<Record<string, unknown>>, size: number, make: (key: Key) => Value) {
    super();
    this.#records = records;
    this.#make = make;
    this.size = size;
  }

  get(key: Key): Value | undefined {
    const known = this.#made.get(key);
    if (known !== undefined || !this.has(key)) return known;
    const value = this.#make(key);
    this.#made.set(key, value);
    return value;
  }

  override has(key: Key): boolean {
    return Object.hasOwn(this.#records, key);
  }

  *keys(): MapIterator<Key> {
    for (const key in this.#records) yield key as Key;
  }
}
