/** What any map that is only read offers, from its entries. */
export abstract class ReadableMap<Key, Value> implements ReadonlyMap<Key, Value> {
  abstract readonly size: number;
  abstract get(key: Key): Value | undefined;
  /** in the order of the map, making no value */
  abstract keys(): MapIterator<Key>;

  has(key: Key): boolean {
    return this.get(key) !== undefined;
  }

  *entries(): MapIterator<[Key, Value]> {
    for (const key of this.keys()) {
      const value = this.get(key);
      if (value !== undefined) yield [key, value];
    }
  }

  *values(): MapIterator<Value> {
    for (const [, value] of this.entries()) yield value;
  }

  [Symbol.iterator](): MapIterator<[Key, Value]> {
    return this.entries();
  }

  forEach(act: (value: Value, key: Key, map: ReadonlyMap<Key, Value>) => void): void {
    for (const [key, value] of this.entries()) act(value, key, this);
  }
}
