import { type Box, changeOf, isFlag, overlaps, type PlacedNote, unionOf } from "../../core";
import { type Camera, type Size, viewOf } from "./camera";
import { STROKES_REACH } from "./paint";
import type { BoardView } from "./view";

/** Everything that the drawing's layer is painted from. */
export interface Painting {
  readonly view: BoardView;
  readonly placed: readonly PlacedNote[];
  readonly camera: Camera;
  readonly size: Size;
}

/** So many parts are not worth painting one by one. */
const MANY_PARTS = 6;
/** Up to so many plates a drawing is painted whole. */
const MANY_PLATES = 60;
/** So many boxes are not worth telling apart. */
const MANY_BOXES = 400;
/** How far the ring around a work point reaches [screen px]. */
const RING_REACH = 25;

/**
 * Where a drawing is painted: as near to where the camera looks as it can be moved there pixel by pixel from where it was,
 * so that what moves by nothing but a pan is the same picture.
 */
export function pixelByPixel(was: Painting | undefined, camera: Camera): Camera {
  if (was?.camera.scale !== camera.scale) return camera;
  const ratio = globalThis.devicePixelRatio;
  const near = (from: number, to: number) => from + Math.round((to - from) * ratio) / ratio;
  return { ...camera, x: near(was.camera.x, camera.x), y: near(was.camera.y, camera.y) };
}

/** So long a stretched picture stands before a sharp one is painted: a few frames [ms]. */
const STRETCHED_MS = 60;
/** By no more it is stretched: beside a picture that is made smaller there is nothing yet. */
const MOST_STRETCHED = 1.25;

/**
 * How the painted picture is laid on the screen while the camera zooms, as a style's transform; nothing where it has to be
 * painted: to paint all of a large drawing takes most of a frame, and to stretch it next to nothing.
 *
 * @param standing how long ago it was painted [ms]
 */
export function stretchedAs(was: Camera, is: Camera, standing: number): string | undefined {
  const by = is.scale / was.scale;
  const isLittle = by <= MOST_STRETCHED && by >= 1 / MOST_STRETCHED;
  if (by === 1 || !isLittle || standing > STRETCHED_MS) return undefined;
  return `translate(${is.x - was.x * by}px, ${is.y - was.y * by}px) scale(${by})`;
}

/**
 * The parts of the drawing that must be painted again, each by itself; none where what is on the canvas still holds. What
 * does hold is moved to where it is now: to paint all of a large drawing takes longer than a frame.
 */
export function staleParts(
  was: Painting | undefined,
  is: Painting,
  context: CanvasRenderingContext2D,
): readonly Box[] {
  const whole = viewOf(is.camera, is.size);
  if (was === undefined || !standsInTheSameFrame(was, is) || !isInPixelsOfScreen(is, context)) return [whole];
  // Plates run through every part: to paint a small drawing whole costs less than to cut it well.
  if (is.view.scene.plates.length > 0 && is.view.scene.plates.length < MANY_PLATES) return [whole];
  const change = was.view.scene === is.view.scene ? undefined : changeOf(is.view.scene);
  if (was.view.scene !== is.view.scene && change?.before !== was.view.scene) return [whole];
  if (change?.of === "looks") return [whole];
  const pieces = change === undefined ? [] : [...change.gone, ...change.come];
  const { scale } = is.camera;
  const stale = [
    ...pieces.map(({ box }) => grown(box, STROKES_REACH / scale)),
    ...differing(was.placed, is.placed).map((note) => boxOfNote(note, scale)),
  ]
    .filter((it) => overlaps(it, whole))
    .map((it) => inWholePixels(it, is.camera));
  const parts = stale.length > MANY_BOXES ? [unionOf(stale)!] : apart(stale);
  const bared = moved(was, is, context).map((it) => inWholePixels(it, is.camera));
  return [...bared, ...(parts.length > MANY_PARTS ? [unionOf(parts)!] : parts)];
}

/** Moves what is on the canvas as the camera was moved, and says what this leaves bare. */
function moved(
  { camera: was }: Painting,
  { camera: is, size }: Painting,
  context: CanvasRenderingContext2D,
): readonly Box[] {
  const [across, down] = [is.x - was.x, is.y - was.y];
  if (across === 0 && down === 0) return [];
  const ratio = globalThis.devicePixelRatio;
  context.save();
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.globalCompositeOperation = "copy";
  context.drawImage(context.canvas, Math.round(across * ratio), Math.round(down * ratio));
  context.restore();
  const [whole, held] = [viewOf(is, size), viewOf(was, size)];
  return [
    { ...whole, right: held.left },
    { ...whole, left: held.right },
    { ...whole, bottom: held.top },
    { ...whole, top: held.bottom },
  ].filter(({ left, right, top, bottom }) => left < right && top < bottom);
}

/** Boxes that cover the same, none of which overlaps another. */
function apart(boxes: readonly Box[]): readonly Box[] {
  const parts: Box[] = [];
  for (let box of boxes) {
    for (let at; (at = parts.findIndex((it) => overlaps(it, box))) !== -1;)
      box = unionOf([box, ...parts.splice(at, 1)])!;
    parts.push(box);
  }
  return parts;
}

/**
 * Whether a pixel of the canvas is one of the screen. On another screen than it was sized for it is not, and what is moved by
 * pixels of this one would come to stand beside its place.
 */
const isInPixelsOfScreen = ({ size }: Painting, { canvas }: CanvasRenderingContext2D): boolean =>
  canvas.width === Math.floor(size.width * globalThis.devicePixelRatio);

/** Whether all holds that every part of the picture depends on, wherever it lies: the scene and its notes are looked at one by one. */
function standsInTheSameFrame(was: Painting, is: Painting): boolean {
  return (
    was.view.palette === is.view.palette &&
    was.view.sizes === is.view.sizes &&
    was.view.lit === is.view.lit &&
    was.camera.scale === is.camera.scale &&
    was.size.width === is.size.width &&
    was.size.height === is.size.height
  );
}

/** Notes that stood elsewhere before or no longer stand, and those that stand now and did not. */
function differing(was: readonly PlacedNote[], is: readonly PlacedNote[]): PlacedNote[] {
  if (was === is) return [];
  const before = new Map(was.map((it) => [it.note, it]));
  const come = is.filter((it) => !standsAlike(before.get(it.note), it));
  const after = new Map(is.map((it) => [it.note, it]));
  return [...was.filter((it) => !standsAlike(after.get(it.note), it)), ...come];
}

const standsAlike = (one: PlacedNote | undefined, other: PlacedNote): boolean =>
  one?.x === other.x && one.y === other.y && one.width === other.width && one.height === other.height;

function boxOfNote({ note, x, y, width, height }: PlacedNote, scale: number): Box {
  const [across, down] = [width / 2 / scale, height / 2 / scale];
  const frame = grown({ left: x - across, right: x + across, top: y - down, bottom: y + down }, 2 / scale);
  if (!isFlag(note)) return frame;
  const ring = note.ring ?? note;
  return unionOf([
    frame,
    grown({ left: ring.x, right: ring.x, top: ring.y, bottom: ring.y }, RING_REACH / scale),
  ])!;
}

const grown = ({ left, top, right, bottom }: Box, by: number): Box => ({
  left: left - by,
  top: top - by,
  right: right + by,
  bottom: bottom + by,
});

/** An edge across a pixel would leave a seam there. */
function inWholePixels({ left, top, right, bottom }: Box, { x, y, scale }: Camera): Box {
  const ratio = globalThis.devicePixelRatio;
  const snapped = (units: number, offset: number, round: (value: number) => number): number =>
    (round((units * scale + offset) * ratio) / ratio - offset) / scale;
  return {
    left: snapped(left, x, Math.floor),
    top: snapped(top, y, Math.floor),
    right: snapped(right, x, Math.ceil),
    bottom: snapped(bottom, y, Math.ceil),
  };
}
