import { expect, test, vi } from "vitest";
import { AskedMap } from "./askedMap";
import { revised } from "./revisedMap";

const records = { a: 1, b: 2, c: 3 };

test("a value is made when it is asked for, and once", () => {
  const make = vi.fn((key: string) => key.toUpperCase());
  const map = new AskedMap(records, 3, make);
  expect([...map.keys()]).toEqual(["a", "b", "c"]);
  expect([map.has("b"), map.has("toString"), map.get("toString"), map.size]).toEqual([
    true,
    false,
    undefined,
    3,
  ]);
  expect(make).not.toHaveBeenCalled();
  expect([map.get("b"), map.get("b")]).toEqual(["B", "B"]);
  expect(make.mock.calls).toEqual([["b"]]);
  expect([...map]).toEqual([
    ["a", "A"],
    ["b", "B"],
    ["c", "C"],
  ]);
  expect(make).toHaveBeenCalledTimes(3);
});

test("revising a few of its entries makes no others", () => {
  const make = vi.fn((key: string) => key.toUpperCase());
  const map = revised(
    new AskedMap(records, 3, make),
    new Map([
      ["b", undefined],
      ["d", "D"],
    ]),
  );
  expect([...map.keys()]).toEqual(["a", "c", "d"]);
  expect(map.size).toBe(3);
  expect(make).not.toHaveBeenCalled();
  expect([...map.values()]).toEqual(["A", "C", "D"]);
});
