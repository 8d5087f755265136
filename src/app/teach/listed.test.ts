import { expect, test } from "vitest";
import { isLong, listable, listed } from "./listed";

const things = (count: number) =>
  Array.from({ length: count }, (_, n) => listable(`c${n}`, `c${n}`, { label: `Cutout ${n}` }));
const values = (some: readonly { readonly value: string }[]) => some.map(({ value }) => value);

test("a short list is there whole, without anything sought", () => {
  expect(isLong(things(40))).toBe(false);
  expect(listed(things(40), "", "")).toHaveLength(40);
});

test("of thousands of things those stand there that are sought, and the one that is chosen", () => {
  const all = things(6000);
  expect(listed(all, "", "")).toEqual([]);
  expect(values(listed(all, "", "c7"))).toEqual(["c7"]);
  expect(values(listed(all, "cutout 5123", "c7"))).toEqual(["c7", "c5123"]);
  expect(values(listed(all, "cutout 5123", "c5123"))).toEqual(["c5123"]);
  expect(listed(all, "cutout", "")).toHaveLength(50);
});
