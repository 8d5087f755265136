import { english } from "../../../../tests/support/words";
import { describe, expect, test } from "vitest";
import { doubleThrow } from "../../../../tests/support/doubleThrow";
import { assess } from "../../hazard";
import { type ElementId, type PointId } from "../../terms";
import { type Scene, sceneOf, type Way } from "..";

const sceneIn = (way: Way, ...thrown: Parameters<typeof doubleThrow>): Scene => {
  const document = doubleThrow(...thrown);
  return sceneOf(document, assess(document), { catalogue: english, way });
};

const strandsOf = (scene: Scene, ...ids: string[]) =>
  ids.flatMap((id) =>
    scene.elements
      .get(id as ElementId)!
      .shapes.flatMap((it) => (it.shape === "strand" && it.letter !== "N" ? [it.points] : [])),
  );

type Stretch = readonly [number, number, number, number];
const stretchesOf = (points: readonly number[]): Stretch[] =>
  Array.from({ length: points.length / 2 - 1 }, (_, k) => points.slice(2 * k, 2 * k + 4) as never);

/** Whether two stretches that are level or upright have a spot in common. */
const touch = ([a, b, c, d]: Stretch, [e, f, g, h]: Stretch): boolean =>
  Math.min(a, c) <= Math.max(e, g) &&
  Math.min(e, g) <= Math.max(a, c) &&
  Math.min(b, d) <= Math.max(f, h) &&
  Math.min(f, h) <= Math.max(b, d);

const WAYS = (["across", "down"] as const).flatMap((way) =>
  (["north", "south"] as const).map((first) => [way, first] as const),
);

describe.each(WAYS)("A double throw that a line comes to at each end, running %s, %s first", (way, first) => {
  const scene = sceneIn(way, "utility", first);

  test("each place has its own plate, once", () => {
    expect(scene.plates.map(({ plate }) => plate.title).sort()).toEqual([
      "North station",
      "Pole 11",
      "Pole 12",
      "Pole 13",
      "South station",
    ]);
  });

  test("the line that it feeds meets neither of those that feed it", () => {
    const fed = strandsOf(scene, "sp4").flatMap(stretchesOf);
    const feeding = strandsOf(scene, "sp2", "sp3").flatMap(stretchesOf);
    expect(fed.filter((one) => feeding.some((other) => touch(one, other)))).toEqual([]);
  });

  test("the contact of each end is on the side from which its line comes", () => {
    const { shapes } = scene.elements.get("ts1" as ElementId)!;
    const discs = shapes.flatMap((it) => (it.shape === "disc" ? [it] : []));
    const along = way === "across" ? "y" : "x";
    const aside = way === "across" ? "x" : "y";
    const { centre } = scene.routes.get("ts1" as ElementId)!;
    const beside = discs.find((it) => Math.abs(it[aside] - centre[aside]) > 5)!;
    const [third] = scene.points.get((first === "north" ? "p2b" : "p2") as PointId)!.spine as [
      number,
      number,
    ];
    const spine = scene.points.get((first === "north" ? "p2b" : "p2") as PointId)!.spine;
    const its = aside === "x" ? third : spine[1]!;
    expect(Math.sign(beside[aside] - centre[aside])).toBe(Math.sign(its - centre[aside]));
    expect(discs.filter((it) => Math.abs(it[along] - centre[along]) > 5)).toHaveLength(2);
  });
});

describe.each([
  ["utility", ["energized", "energized", "energized"], "north"],
  ["generator", ["energized", "energized", "energized"], "south"],
  ["off", ["isolated", "isolated", "isolated"], undefined],
] as const)("thrown to %s", (position, states, to) => {
  test.each(["north", "south"] as const)("one blade has a stroke for each phase, %s first", (first) => {
    const scene = sceneIn("across", position, first);
    const short = scene.elements.get("ts1" as ElementId)!.shapes.filter((it) => {
      if (it.shape !== "stroke" || it.points.length !== 4) return false;
      const [x, y, toX, toY] = it.points as [number, number, number, number];
      const length = Math.hypot(toX - x, toY - y);
      return length > 12 && length < 13;
    });
    expect(short).toHaveLength(3);
  });

  test.each(["north", "south"] as const)("the blade stands on the contact of that end, %s first", (first) => {
    const scene = sceneIn("across", position, first);
    const { shapes } = scene.elements.get("ts1" as ElementId)!;
    const { centre } = scene.routes.get("ts1" as ElementId)!;
    // A blade begins or ends on a contact inside the box.
    const contacts = shapes.flatMap((it) =>
      it.shape === "disc" ? [{ x: it.x - centre.x, y: it.y - centre.y }] : [],
    );
    const ends = shapes
      .flatMap((it) => (it.shape === "stroke" && !it.closed && it.points.length === 4 ? [it.points] : []))
      .map((it) => [0, 2].map((k) => ({ x: it[k]! - centre.x, y: it[k + 1]! - centre.y })));
    const isAt = (one: { x: number; y: number }, other: { x: number; y: number }) =>
      Math.hypot(one.x - other.x, one.y - other.y) < 1;
    const inner = ends.filter(
      (it) => it.every(({ x, y }) => Math.max(Math.abs(x), Math.abs(y)) < 18) && it.some(({ y }) => y > 5),
    );
    const touched = contacts.filter(
      (it) => it.y < 5 && inner.some((blade) => blade.some((end) => isAt(end, it))),
    );
    const isAhead = to === first;
    expect(touched.map(({ x }) => (Math.abs(x) < 1 ? "ahead" : "beside"))).toEqual(
      to === undefined ? [] : [isAhead ? "ahead" : "beside"],
    );
    const fed = scene.elements.get("sp4" as ElementId)!.shapes;
    expect(fed.flatMap((it) => (it.shape === "strand" && it.letter !== "N" ? [it.look] : []))).toEqual(
      states,
    );
  });
});
