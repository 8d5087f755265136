import fc from "fast-check";
import { expect, test } from "vitest";
import { FewIslands, Islands } from "./islands";

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

test("of few numbers those that were joined go by one label, and a join says whether they were one before", () => {
  const numbers = fc.integer({ min: 0, max: 11 });
  fc.assert(
    fc.property(fc.array(fc.tuple(numbers, numbers), { maxLength: 20 }), (pairs) => {
      const [few, all] = [new FewIslands(), new Islands(12)];
      for (const [one, other] of pairs) expect(few.join(one, other)).toBe(all.join(one, other) === undefined);
      const labels = all.labels();
      for (let a = 0; a < 12; a++)
        for (let b = 0; b < 12; b++) expect(few.labelOf(a) === few.labelOf(b)).toBe(labels[a] === labels[b]);
    }),
  );
});
