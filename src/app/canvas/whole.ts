import {
  type Box,
  isAfar,
  lettersAt,
  type NoteSizes,
  placeNotes,
  type Scene,
  symbolLengthAt,
  unionOf,
} from "../../core";
import { broughtIn, type Camera, fitted, showing, type Size, zoomedAt } from "./camera";

/** Length of a symbol with which it and its labels can be told apart [px]. */
const READABLE = 24;
/** A whole drawing that is a little smaller than that is still worth more than a part of it. */
const STILL_READABLE = 17;

/** Where to look at a drawing from, of which bounds and a spot are known. */
type LookFrom = (scene: Scene, bounds: Box, size: Size, sizes: NoteSizes, spot?: readonly number[]) => Camera;

/** Shows a whole drawing where it stays readable, else as much of it as does, around a spot. */
export const firstLook: LookFrom = (scene, bounds, size, sizes, [x, y] = []) => {
  const whole = wholeWithNotes(scene, bounds, size, sizes);
  const symbol = symbolLengthAt(scene, whole.scale);
  if (symbol >= STILL_READABLE && !isAfar(scene, whole.scale)) return whole;
  const readable = zoomedAt(whole, READABLE / symbol, size.width / 2, size.height / 2);
  const aimed =
    x === undefined || y === undefined
      ? readable
      : showing(readable, [x, y], size.width * 0.4, size.height / 2);
  return broughtIn(aimed, withNotes(scene, bounds, aimed.scale, sizes), size);
};

/**
 * Shows a whole drawing: labels keep their size, so that what they need beside it is a margin of the screen. None
 * makes a drawing so small that its symbols would be marks: what is written finds its place among them then.
 */
export const wholeWithNotes: LookFrom = (scene, bounds, size, sizes) => {
  const bare = fitted(bounds, size);
  let [camera, beside] = [bare, bare];
  for (let round = 0; round < 2; round++) {
    const { scale } = camera;
    const { left, top, right, bottom } = withNotes(scene, bounds, scale, sizes);
    const aside = {
      left: (bounds.left - left) * scale,
      right: (right - bounds.right) * scale,
      top: 0,
      bottom: 0,
    };
    beside = fitted(bounds, size, aside);
    camera = fitted(bounds, size, {
      ...aside,
      top: (bounds.top - top) * scale,
      bottom: (bottom - bounds.bottom) * scale,
    });
  }
  return [camera, beside, bare].find((it) => !isAfar(scene, it.scale)) ?? camera;
};

/** The boxes around all that is written at a drawing, by the scale and the letters: it is looked at whole more than once. */
const written = new WeakMap<Scene, Map<string, Box | undefined>>();

/** The box around a drawing and all that is written at it. */
function withNotes(scene: Scene, bounds: Box, scale: number, sizes: NoteSizes): Box {
  const { label, small } = sizesAt(sizes, scene, scale);
  const known = written.get(scene) ?? new Map<string, Box | undefined>();
  written.set(scene, known);
  const key = `${scale} ${label} ${small}`;
  if (!known.has(key)) known.set(key, unionOf(boxesOf(scene, scale, { label, small })));
  return unionOf([bounds, known.get(key) ?? bounds])!;
}

const boxesOf = (scene: Scene, scale: number, sizes: NoteSizes): readonly Box[] =>
  placeNotes(scene, scale, sizes).map(({ x, y, width, height }) => ({
    left: x - width / 2 / scale,
    right: x + width / 2 / scale,
    top: y - height / 2 / scale,
    bottom: y + height / 2 / scale,
  }));

/** The sizes of letters at a scale: in a laid out drawing each has its place beside its symbol. */
export function sizesAt({ label, small }: NoteSizes, { way }: Scene, scale: number): NoteSizes {
  const factor = way === undefined ? 1 : lettersAt(scale);
  return factor === 1 ? { label, small } : { label: label * factor, small: small * factor };
}
