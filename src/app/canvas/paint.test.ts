import { afterEach, expect, test, vi } from "vitest";
import { sidelineSystem } from "../../../tests/support/sideline";
import { assess, type Box, isUnreadable, PALETTES, readDocument, type Scene, sceneOf } from "../../core";
import { inEnglish } from "../words/catalogue";
import { LEAST_SCALE } from "./camera";
import { paintScene } from "./paint";

afterEach(() => vi.unstubAllGlobals());

/** What a canvas was asked to stroke: each path with its colour, and where its lines begin. */
interface Stroke {
  readonly colour: string;
  readonly lines: readonly (readonly [number, number])[];
  readonly corners: number;
}

class Path {
  readonly lines: [number, number][] = [];
  corners = 0;
  moveTo(x: number, y: number) {
    this.lines.push([x, y]);
  }
  lineTo() {
    this.corners++;
  }
}

function strokesAt(scene: Scene, scale: number, part: Box = scene.bounds!): readonly Stroke[] {
  vi.stubGlobal("Path2D", Path);
  const strokes: Stroke[] = [];
  const context = {
    strokeStyle: "",
    setLineDash: () => undefined,
    stroke: ({ lines, corners }: Path) => strokes.push({ colour: context.strokeStyle, lines, corners }),
  };
  paintScene(context as unknown as CanvasRenderingContext2D, scene, PALETTES.sun, scale, part);
  return strokes;
}

function large(): Scene {
  const read = readDocument(JSON.stringify(sidelineSystem(400)));
  if (isUnreadable(read)) throw new Error("it does not read");
  return sceneOf(read.document, assess(read.document), { catalogue: inEnglish });
}

const cornersOf = (strokes: readonly Stroke[]) => strokes.reduce((sum, it) => sum + it.corners, 0);

test("from so far that lines lie on each other they are few strokes; closer each has its own", () => {
  const scene = large();
  const close = cornersOf(strokesAt(scene, 0.25));
  const far = cornersOf(strokesAt(scene, LEAST_SCALE));
  expect(close).toBeGreaterThanOrEqual(scene.elements.size);
  expect(far).toBeLessThan(scene.elements.size * 0.6);
});

test("no look leaves its place from afar: where an element is live or isolated, within a pixel a stroke tells it", () => {
  const scene = large();
  const scale = 0.004;
  const strokes = strokesAt(scene, scale);
  for (const [look, colour] of [
    ["energized", PALETTES.sun.hot],
    ["isolated", PALETTES.sun.isolated],
  ] as const) {
    const begun = strokes.filter((it) => it.colour === colour).flatMap((it) => it.lines);
    const looking = [...scene.elements.values()].filter((it) => it.overall === look);
    expect(looking.length).toBeGreaterThan(3);
    for (const { spine } of looking)
      expect(begun.some(([x, y]) => Math.hypot(x - spine[0]!, y - spine[1]!) * scale < 1.5)).toBe(true);
  }
});
