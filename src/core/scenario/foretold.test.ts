import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { structureOf } from "../document";
import { lookFirst } from "../doubts";
import type { WorkPointId } from "../terms";
import type { FactReport } from "./debrief";
import { foretold } from "./foretold";

/** A tap opened at its cutout; the work is beyond it, and the line ends two poles on. */
const map = draw(`
  s1  source    p1     ABC  kvLL=12.47 evidence=seen
  c1  cutout    p1-p2  A    open=A
  sp1 span      p2-p3  A
  w1  work      p2     A
`);
const { entries } = lookFirst(map, "w1" as WorkPointId);
const shows = (by: FactReport["ways"][number]["by"], at: string): FactReport["ways"] => [{ by, at: [at] }];

test("the line is the first one that leads to the structure where a look shows the fact", () => {
  const places = entries.map(({ doubt }) => doubt.structure!);
  expect(new Set(places).size).toBeGreaterThan(1);
  for (const place of new Set(places)) {
    for (const point of structureOf(map.system, place)!.points) {
      const line = places.indexOf(place) + 1;
      expect(foretold(map, entries, shows("inspect", point))).toEqual({ line, entry: entries[line - 1] });
    }
  }
});

test("what no look shows, or no line leads to, was foretold by none", () => {
  const there = structureOf(map.system, entries[0]!.doubt.structure!)!.points[0]!;
  expect(foretold(map, entries, shows("test", there))).toBeUndefined();
  expect(foretold(map, [], shows("inspect", there))).toBeUndefined();
});
