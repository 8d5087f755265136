import fc from "fast-check";
import { expect, test } from "vitest";
import { revised } from "./revisedMap";

const revisions = fc.array(
  fc.array(fc.tuple(fc.nat(1500), fc.option(fc.nat(9), { nil: undefined })), { maxLength: 400 }),
  { maxLength: 12 },
);

test("a map revised again and again is the map to which the same was done", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.nat(1500), fc.nat(9)), { maxLength: 300 }),
      revisions,
      (start, rounds) => {
        const plain = new Map(start);
        let map: ReadonlyMap<number, number> = new Map(start);
        for (const round of rounds) {
          map = revised(map, new Map(round));
          for (const [key, value] of new Map(round))
            if (value === undefined) plain.delete(key);
            else plain.set(key, value);
          expect(map.size).toBe(plain.size);
          expect(new Map(map)).toEqual(plain);
          for (const [key, value] of plain) expect([map.has(key), map.get(key)]).toEqual([true, value]);
          for (const [key, value] of round)
            if (value === undefined && !plain.has(key)) expect(map.has(key)).toBe(false);
        }
        expect([...map.keys()].sort()).toEqual([...plain.keys()].sort());
        expect([...map.values()].sort()).toEqual([...plain.values()].sort());
      },
    ),
    { numRuns: 60 },
  );
});
