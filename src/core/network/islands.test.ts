import fc from "fast-check";
import { expect, test } from "vitest";
import { Islands } from "./islands";

test("each number goes by the lowest one that it is joined to, in whatever order they were joined", () => {
  const islands = new Islands(7);
  for (const [from, to] of [
    [5, 4],
    [2, 6],
    [4, 2],
    [3, 1],
  ] as const)
    islands.join(from, to);
  expect([...islands.labels()]).toEqual([0, 1, 2, 1, 2, 2, 2]);
});

test("a join within an island says what was already the case, whichever way round it is asked", () => {
  const islands = new Islands(4);
  expect(islands.join(3, 2, 1.1)).toBeUndefined();
  expect(islands.join(0, 2, 1.1)).toBeUndefined();
  expect(islands.join(0, 1)).toBeUndefined();
  expect(islands.join(0, 3)).toBeCloseTo(1);
  expect(islands.join(3, 1)).toBeCloseTo(1);
  expect(islands.join(1, 2)).toBeCloseTo(1.1);
  expect(islands.join(2, 1)).toBeCloseTo(1 / 1.1);
});

test("joins that agree with one value at each number are never found to say otherwise", () => {
  const numbers = fc.integer({ min: 0, max: 11 });
  const values = fc.array(fc.double({ min: 0.5, max: 2, noNaN: true }), { minLength: 12, maxLength: 12 });
  fc.assert(
    fc.property(values, fc.array(fc.tuple(numbers, numbers), { maxLength: 40 }), (value, pairs) => {
      const islands = new Islands(12);
      for (const [from, to] of pairs) {
        const ratio = value[to]! / value[from]!;
        expect(islands.join(from, to, ratio) ?? ratio).toBeCloseTo(ratio, 9);
      }
    }),
  );
});
