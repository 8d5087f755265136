import { afterEach, expect, test, vi } from "vitest";
import { sceneOf } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { inEnglish } from "../words/catalogue";
import { type Painting, pixelByPixel, staleParts, stretchedAs } from "./stale";
import type { BoardView } from "./view";

afterEach(() => vi.unstubAllGlobals());

const SIZE = { width: 800, height: 600 };
const view = { scene: sceneOf(emptyDrawing, undefined, { catalogue: inEnglish }) } as BoardView;
const paintedAt = (x: number): Painting => ({ view, placed: [], size: SIZE, camera: { x, y: 0, scale: 2 } });

/** What a pan from 0 paints anew, and by how many pixels it moves what is on a canvas of so many. */
function panned(to: number, pixelsAcross: number) {
  const moves: (readonly number[])[] = [];
  const context = {
    canvas: { width: pixelsAcross },
    save: () => undefined,
    restore: () => undefined,
    setTransform: () => undefined,
    drawImage: (_canvas: unknown, across: number, down: number) => moves.push([across, down]),
  } as unknown as CanvasRenderingContext2D;
  const was = paintedAt(0);
  const is = { ...was, camera: pixelByPixel(was, paintedAt(to).camera) };
  return { moves, parts: staleParts(was, is, context) };
}

test("a pan moves what is painted by whole pixels, and paints what it bares", () => {
  vi.stubGlobal("devicePixelRatio", 1.25);
  const { moves, parts } = panned(10, 1000);
  // 12.5 pixels are 13, which are 10.4 px of the page and 5.2 units of the drawing.
  expect(moves).toEqual([[13, 0]]);
  expect(parts).toHaveLength(1);
  expect(parts[0]!.left).toBeCloseTo(-5.2);
  expect(parts[0]!.right).toBeCloseTo(0);
});

test("on a screen of other pixels than the canvas was made for nothing is moved: all is painted", () => {
  vi.stubGlobal("devicePixelRatio", 1.25);
  const { moves, parts } = panned(10, 800);
  expect(moves).toEqual([]);
  expect(parts).toHaveLength(1);
  expect(parts[0]!.right - parts[0]!.left).toBeCloseTo(400);
});

test("under zoom the picture is stretched for a few frames so that each spot lies where the camera has it", () => {
  const was = { x: 40, y: -10, scale: 2 };
  const is = { x: 30, y: -20, scale: 2.2 };
  const [x = NaN, y = NaN, by = NaN] = (stretchedAs(was, is, 20) ?? "").match(/-?[\d.]+/g)!.map(Number);
  const painted = 7 * was.scale + was.x;
  expect(painted * by + x).toBeCloseTo(7 * is.scale + is.x);
  expect(-3 * was.scale * by + was.y * by + y).toBeCloseTo(-3 * is.scale + is.y);
});

test.each([
  ["a pan", { x: 50, y: 0, scale: 2 }, 0],
  ["a picture that has stood for some frames", { x: 0, y: 0, scale: 2.1 }, 80],
  ["a zoom so far out that there is nothing at its edges", { x: 0, y: 0, scale: 1.5 }, 0],
])("%s is painted", (_, is, standing) => {
  expect(stretchedAs({ x: 0, y: 0, scale: 2 }, is, standing)).toBeUndefined();
});
