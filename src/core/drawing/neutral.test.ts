/** The neutral as it is drawn where the program lays the picture out. */
import { english } from "../../../tests/support/words";
import { describe, expect, test } from "vitest";
import { atWork } from "../../../tests/support/atWork";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { drawn } from "../../../tests/support/drawn";
import type { StillhotDocument } from "../document";
import { assess } from "../hazard";
import type { ElementId, Letter } from "../terms";
import { type Scene, sceneOf, type Shape, type Strand, type Way } from ".";

const WAYS: readonly Way[] = ["across", "down"];

const demo = (name: string): StillhotDocument => new Map(demoDrawings()).get(`${name}.stillhot.json`)!;

const sceneIn = (document: StillhotDocument, way: Way): Scene =>
  sceneOf(document, assess(document), { catalogue: english, way });

const shapesOf = (scene: Scene, id: string): readonly Shape[] => scene.elements.get(id as ElementId)!.shapes;

/** The only conductor of a letter of an element, x and y in turn. */
const wayOf = (scene: Scene, id: string, letter: Letter): readonly number[] => {
  const strands = shapesOf(scene, id).filter(
    (it): it is Strand => it.shape === "strand" && it.letter === letter,
  );
  expect(strands.map((it) => it.letter)).toEqual([letter]);
  return strands[0]!.points;
};

const isAlong = (points: readonly number[], [x, y]: readonly number[]): boolean =>
  points.some((_, k) => {
    if (k % 2 === 1 || k + 3 >= points.length) return false;
    const [ax, ay, bx, by] = points.slice(k, k + 4) as [number, number, number, number];
    const around = Math.hypot(ax - x!, ay - y!) + Math.hypot(bx - x!, by - y!);
    return around - Math.hypot(bx - ax, by - ay) < 0.01;
  });

describe.each(WAYS)("Where the line runs %s", (way) => {
  test("the neutral of a line that goes on behind an open cutout has no gap there", () => {
    const scene = sceneIn(atWork(demo("sideline-three-transformers")), way);
    const [clamp, cutout] = [wayOf(scene, "k1", "N"), wayOf(scene, "c1", "N")];
    expect(clamp.slice(0, 2)).toEqual(wayOf(scene, "sp1", "N").slice(-2));
    expect(cutout.slice(0, 2)).toEqual(clamp.slice(-2));
    expect(isAlong(wayOf(scene, "sp2", "N"), cutout.slice(-2))).toBe(true);
  });

  test("the neutral of a loop of pads has no gap at its second riser", () => {
    const scene = sceneIn(demo("underground-loop"), way);
    const past = wayOf(scene, "c2", "N");
    expect(isAlong(wayOf(scene, "sp2", "N"), past.slice(0, 2))).toBe(true);
    expect(isAlong(wayOf(scene, "sp5", "N"), past.slice(-2))).toBe(true);
  });

  test("past a switch in the line it steps aside, clear of the open blade", () => {
    const scene = sceneIn(demo("sideline-far-end-tie"), way);
    const id = [...scene.elements.keys()].find(
      (it) => scene.document.system.elements[it]!["label"] === "far end tie",
    )!;
    const { centre, laid } = scene.routes.get(id)!;
    const off = (x: number, y: number) => Math.abs(laid!.body.y === 0 ? y - centre.y : x - centre.x);
    const blade = shapesOf(scene, id).flatMap((it) => (it.shape === "stroke" ? [it.points] : []));
    const reach = Math.max(
      ...blade.flatMap((it) => it.flatMap((x, k) => (k % 2 === 0 ? off(x, it[k + 1]!) : []))),
    );
    const neutral = wayOf(scene, id, "N");
    const middle = neutral.slice(4, -4);
    expect(middle.length).toBe(4);
    expect(Math.min(off(middle[0]!, middle[1]!), off(middle[2]!, middle[3]!))).toBeGreaterThan(reach + 2);
  });

  test("behind a cutout from which no line leaves there is none", () => {
    const scene = sceneIn(demo("sideline-three-transformers"), way);
    expect(shapesOf(scene, "c2").filter((it) => it.shape === "strand" && it.letter === "N")).toEqual([]);
  });

  test.each([
    ["neutral", true],
    ["both", true],
    ["earth", false],
  ])("a ground set to %s is seen to be tied to the neutral, or not to be", (to, isTied) => {
    const document = drawn({
      elements: {
        src: { kind: "source", phases: "ABC", at: "p1", kvLL: 12.47 },
        sp: { kind: "span", phases: "ABC", from: "p1", to: "p2" },
        g: { kind: "ground", phases: "B", at: "p2", to },
      },
    });
    const scene = sceneIn(document, way);
    const discs = shapesOf(scene, "g").filter((it) => it.shape === "disc");
    expect(discs.length).toBe(isTied ? 2 : 0);
    if (!isTied) return;
    const [phase, neutral] = discs.map(({ x, y }) => [x, y] as const);
    expect(isAlong(wayOf(scene, "g", "N"), neutral!)).toBe(true);
    const ties = shapesOf(scene, "g").filter(
      (it): it is Strand => it.shape === "strand" && it.letter === "B",
    );
    expect(ties.some(({ points }) => isAlong(points, phase!) && isAlong(points, neutral!))).toBe(true);
    // It passes A on its way by a bridge, and does not touch it.
    expect(Math.max(...ties.map(({ points }) => points.length))).toBeGreaterThan(8);
  });
});
