import { expect, test } from "vitest";
import { madeFrom } from "../../../../tests/support/pictures";
import { assess } from "../../hazard";
import { english } from "../../../../tests/support/words";
import { sceneOf } from "..";

test("a line to something beyond passes under what ends on its way: no live line runs through the points of an open tap", () => {
  const [random] = madeFrom(31028);
  const document = random!.document();
  const scene = sceneOf(document, assess(document), { catalogue: english });
  const [, ends] = scene.points.get("p7" as never)!.spine as [number, number];
  const line = scene.elements.get("t5" as never)!.spine;
  const heights = line.filter((_, nth) => nth % 2 === 1);
  // It begins where the cutout ends, at their height, and runs on under them.
  expect(heights[0]).toBe(ends);
  expect(Math.min(...heights.slice(1, -1))).toBeGreaterThan(ends);
});
