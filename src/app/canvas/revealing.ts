import { type Box, overlaps } from "../../core";
import { type Camera, contains, fitted, showing, type Size, viewOf, ZOOM_BUTTONS } from "./camera";

/** Moved as little as needed to bring a box into view. */
export function revealing(camera: Camera, size: Size, box: Box): Camera {
  const inView = viewOf(camera, size);
  if (contains(inView, box)) return camera;
  if (!overlaps(inView, box)) return showing(camera, middleOf(box), size.width / 2, size.height / 2);
  const across = beyond(box.left, box.right, inView.left, inView.right) * camera.scale;
  const down = beyond(box.top, box.bottom, inView.top, inView.bottom) * camera.scale;
  return { ...camera, x: camera.x - across, y: camera.y - down };
}

/** Moved so that a whole box is in view, zoomed out where it does not fit. */
export function revealingAll(camera: Camera, size: Size, box: Box): Camera {
  if (contains(viewOf(camera, size), box)) return camera;
  const whole = fitted(box, size);
  if (whole.scale < camera.scale) return whole;
  return showing(camera, middleOf(box), size.width / 2, (size.height - ZOOM_BUTTONS) / 2);
}

const middleOf = ({ left, right, top, bottom }: Box): [number, number] => [
  (left + right) / 2,
  (top + bottom) / 2,
];

/** By how much a stretch stands out of another, counted along it; nothing where it is longer. */
const beyond = (low: number, high: number, from: number, to: number): number =>
  high - low > to - from ? 0 : low < from ? low - from : Math.max(0, high - to);
