import {
  type Box,
  isAfar,
  lettersAt,
  type NoteSizes,
  placeNotes,
  type Scene,
  symbolLengthAt,
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

/** Shows a whole drawing: labels keep their size, so that what they need beside it is a margin of the screen. */
export const wholeWithNotes: LookFrom = (scene, bounds, size, sizes) => {
  let camera = fitted(bounds, size);
  for (let round = 0; round < 2; round++) {
    const { scale } = camera;
    const { left, top, right, bottom } = withNotes(scene, bounds, scale, sizes);
    camera = fitted(bounds, size, {
      left: (bounds.left - left) * scale,
      top: (bounds.top - top) * scale,
      right: (right - bounds.right) * scale,
      bottom: (bottom - bounds.bottom) * scale,
    });
  }
  return camera;
};

/** The box around a drawing and all that is written at it. */
function withNotes(scene: Scene, bounds: Box, scale: number, sizes: NoteSizes): Box {
  let { left, top, right, bottom } = bounds;
  for (const { x, y, width, height } of placeNotes(scene, scale, sizesAt(sizes, scene, scale))) {
    left = Math.min(left, x - width / 2 / scale);
    right = Math.max(right, x + width / 2 / scale);
    top = Math.min(top, y - height / 2 / scale);
    bottom = Math.max(bottom, y + height / 2 / scale);
  }
  return { left, top, right, bottom };
}

/** The sizes of letters at a scale: in a laid out drawing each has its place beside its symbol. */
export function sizesAt({ label, small }: NoteSizes, { way }: Scene, scale: number): NoteSizes {
  const factor = way === undefined ? 1 : lettersAt(scale);
  return factor === 1 ? { label, small } : { label: label * factor, small: small * factor };
}
