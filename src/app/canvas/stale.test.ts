import { afterEach, expect, test, vi } from "vitest";
import { sceneOf } from "../../core";
import { emptyDrawing } from "../session/emptyDrawing";
import { inEnglish } from "../words/catalogue";
import { type Painting, pixelByPixel, staleParts } from "./stale";
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
