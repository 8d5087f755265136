import { expect, test } from "vitest";
import { drawn } from "../../../../tests/support/drawn";
import { spell } from "../../../../tests/support/words";
import { say } from "../../terms";
import { setAndPlace } from "./names";

test.each([
  ["where it is alone", { g1: {} }, "ground set at Pole 30, below the cutout"],
  ["by its label", { g1: { label: "Set 4" } }, "Set 4 at Pole 30, below the cutout"],
  ["among several of its place", { g1: {}, g2: {} }, "1st ground set at Pole 30, below the cutout"],
])("a ground set is told with its place, once, %s", (_, sets, told) => {
  const structures = { s1: { label: "Pole 30" } };
  const grounds = Object.entries(sets).map(([id, it]) => [
    id,
    { kind: "ground", phases: "A", at: "p2", ...it },
  ]);
  const document = drawn({
    points: { p1: {}, p2: {} },
    elements: {
      src: { kind: "source", phases: "A", at: "p1", kvLL: 12.47 },
      c1: { kind: "cutout", phases: "A", from: "p1", to: "p2" },
      ...(Object.fromEntries(grounds) as Record<string, object>),
    },
  });
  const points = { p1: { on: "s1" }, p2: { on: "s1" } };
  const system = { ...document.system, structures, points } as never;
  expect(spell(say("name.plain", { name: setAndPlace({ system }, "g1") }))).toBe(told);
});
