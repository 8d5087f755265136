import { isDeepStrictEqual } from "node:util";
import { expect } from "vitest";

/**
 * Holds two large things to be the same. Node tells it of long columns many times faster than the test library does, which is
 * asked only where they differ: for the words, and because it takes a key that is undefined for one that is not there.
 */
export function expectSame(is: unknown, should: unknown, told?: string): void {
  const areSame = isDeepStrictEqual(is, should);
  if (areSame) expect(areSame, told).toBe(true);
  else expect(is, told).toEqual(should);
}
