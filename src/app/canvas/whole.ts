import { type Box, lettersAt, type NoteSizes, placeNotes, type Scene } from "../../core";
import { type Camera, fitted, type Size } from "./camera";

/** Shows a whole drawing: labels keep their size, so that what they need beside it is a margin of the screen. */
export function wholeWithNotes(scene: Scene, bounds: Box, size: Size, sizes: NoteSizes): Camera {
  let camera = fitted(bounds, size);
  for (let round = 0; round < 2; round++) {
    const { scale } = camera;
    let [left, top, right, bottom] = [0, 0, 0, 0];
    for (const { x, y, width, height } of placeNotes(scene, scale, sizesAt(sizes, scene, scale))) {
      left = Math.max(left, (bounds.left - x) * scale + width / 2);
      right = Math.max(right, (x - bounds.right) * scale + width / 2);
      top = Math.max(top, (bounds.top - y) * scale + height / 2);
      bottom = Math.max(bottom, (y - bounds.bottom) * scale + height / 2);
    }
    camera = fitted(bounds, size, { left, top, right, bottom });
  }
  return camera;
}

/** The sizes of letters at a scale: in a laid out drawing each has its place beside its symbol. */
export function sizesAt({ label, small }: NoteSizes, { way }: Scene, scale: number): NoteSizes {
  const factor = way === undefined ? 1 : lettersAt(scale);
  return factor === 1 ? { label, small } : { label: label * factor, small: small * factor };
}
