import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { edited } from "../../../tests/support/edited";
import { english } from "../../../tests/support/words";
import type { ElementId, PointId } from "../terms";
import { edits } from "../document";
import { assess } from "../hazard";
import { sceneOf } from "./scene";
import type { Shape } from "./shapes";

/** A line that ends at a device, and a cable from there on; the device is told from the line or from the cable. */
function drawn(kind: string, ends: string, open: string) {
  const document = draw(`
    s1  source  pA     ABC  kvLL=12.47
    sp1 span    pA-p1  A    lengthM=80
    d1  ${kind} ${ends} A   ${open}
    sp2 span    p2-pC  A    lengthM=80 construction=cable
  `);
  return sceneOf(document, assess(document), { catalogue: english });
}

const shapesOf = (scene: ReturnType<typeof drawn>, id: string): readonly Shape[] =>
  (scene.elements.get(id as ElementId) ?? scene.points.get(id as PointId))!.shapes;

/** Spots of what is drawn, and whether as live metal. */
const metal = (shapes: readonly Shape[]) =>
  shapes.flatMap((it) =>
    it.shape === "disc"
      ? [{ isHot: it.isHot === true, x: it.x, y: it.y }]
      : it.shape === "stroke"
        ? [{ isHot: it.isHot === true, x: it.points[0]!, y: it.points[1]! }]
        : [],
  );

/** How much nearer a spot is to one point of the drawing than to another [units]. */
function nearerTo(
  scene: ReturnType<typeof drawn>,
  { x, y }: { x: number; y: number },
  one: string,
  other: string,
) {
  const [near, far] = [one, other].map((id) => scene.points.get(id as PointId)!.spine);
  return Math.hypot(x - far![0]!, y - far![1]!) - Math.hypot(x - near![0]!, y - near![1]!);
}

const WAYS = ["p1-p2", "p2-p1"];
const DEVICES = ["cutout", "disconnect", "clamp", "elbow"].flatMap((kind) =>
  WAYS.map((ends) => [kind, ends] as const),
);

describe("Metal that is live has the look of it", () => {
  test.each(DEVICES)("an open %s, told as %s: on the side of the line alone", (kind, ends) => {
    const scene = drawn(kind, ends, "open=A");
    const live = metal(shapesOf(scene, "d1")).filter(({ isHot }) => isHot);
    expect(live.length).toBeGreaterThan(0);
    for (const it of live) expect(nearerTo(scene, it, "p1", "p2")).toBeGreaterThan(0);
  });

  test.each(DEVICES)("a closed %s, told as %s: on both sides of its middle", (kind, ends) => {
    const scene = drawn(kind, ends, "");
    const live = metal(shapesOf(scene, "d1")).filter(({ isHot }) => isHot);
    expect(live.some((it) => nearerTo(scene, it, "p1", "p2") > 0)).toBe(true);
    expect(live.some((it) => nearerTo(scene, it, "p2", "p1") > 0)).toBe(true);
  });
});

test("of the dots on a plate those of live points alone have the look of it", () => {
  const [, demo] = demoDrawings().find(([name]) => name.startsWith("sideline-three-transformers"))!;
  const opened = edited(demo, edits.open("c1"));
  const scene = sceneOf(opened, assess(opened), { catalogue: english });
  const dots = (id: string) => metal(shapesOf(scene, id)).map(({ isHot }) => isHot);
  expect({ above: dots("p3"), below: dots("p4") }).toEqual({ above: [true], below: [false] });
});

test.each(WAYS)("a parked elbow hangs on the end of its cable, told as %s", (ends) => {
  const scene = drawn("elbow", ends, "open=A");
  const [plug] = shapesOf(scene, "d1").filter((it) => it.shape === "stroke" && it.closed && it.filled);
  const [x, y] = (plug as { points: readonly number[] }).points as [number, number];
  expect(nearerTo(scene, { x, y }, "p2", "p1")).toBeGreaterThan(0);
});
