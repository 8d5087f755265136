import { expect, test } from "vitest";
import { amended } from "./amend";
import type { System } from "./types";

const system = {
  frequencyHz: 60,
  structures: { s1: { kind: "pole" } },
  points: { p1: { earthOhms: 25 }, p2: {} },
  elements: { c1: { kind: "cutout", phases: "A", from: "p1", to: "p2", open: "A" } },
} as unknown as System;

test("what no change is about stays the very object that it was, and what was given stays as it was", () => {
  const written = JSON.stringify(system);
  const closed = amended(system, [{ set: { c1: { open: null } } }]);
  expect(closed.points).toBe(system.points);
  expect(closed.structures).toBe(system.structures);
  expect(closed.elements["c1" as never]).toEqual({ kind: "cutout", phases: "A", from: "p1", to: "p2" });
  const without = amended(system, [{ remove: ["p2", "zz"] }, { add: { points: { p3: {} } } }]);
  expect(Object.keys(without.points)).toEqual(["p1", "p3"]);
  expect(without.elements).toBe(system.elements);
  expect(JSON.stringify(system)).toBe(written);
});

test("later changes see what earlier ones did", () => {
  const both = amended(system, [
    { add: { elements: { c2: { kind: "cutout", phases: "B", from: "p1", to: "p2" } } } },
    { set: { c2: { open: "B" } } },
    { remove: ["c1"] },
  ] as never);
  expect(both.elements).toEqual({ c2: { kind: "cutout", phases: "B", from: "p1", to: "p2", open: "B" } });
});
