import { type Box, indexOf, overlaps, type Scene } from "../../core";
import { contains } from "./camera";

/** Whether anything of a drawing lies in what is in view; of an empty one nothing is missing. */
export function isInSight(scene: Scene, view: Box): boolean {
  const { bounds } = scene;
  if (bounds === undefined || contains(view, bounds)) return true;
  if (!overlaps(view, bounds)) return false;
  const part: Box = {
    left: Math.max(view.left, bounds.left),
    top: Math.max(view.top, bounds.top),
    right: Math.min(view.right, bounds.right),
    bottom: Math.min(view.bottom, bounds.bottom),
  };
  // A line round a corner has a box in which there is nothing of it.
  return [...indexOf(scene).near(part)].some(({ owner, box, spine }) =>
    owner.of === "structure" ? overlaps(box, part) : runsThrough(spine, part),
  );
}

/** Whether a line of straight stretches, or a single spot, has any of itself in a box. */
function runsThrough(spine: readonly number[], box: Box): boolean {
  const last = Math.max(2, spine.length - 2);
  for (let at = 0; at < last; at += 2) {
    const [x, y, toX = x, toY = y] = spine.slice(at, at + 4) as [number, number, number?, number?];
    if (crosses(x, y, toX, toY, box)) return true;
  }
  return false;
}

/** Clips a stretch at each side of the box in turn; what is left of it lies inside. */
function crosses(x: number, y: number, toX: number, toY: number, box: Box): boolean {
  let [from, to] = [0, 1];
  const sides = [
    [x - toX, x - box.left],
    [toX - x, box.right - x],
    [y - toY, y - box.top],
    [toY - y, box.bottom - y],
  ] as const;
  for (const [outward, room] of sides) {
    if (outward === 0 && room < 0) return false;
    if (outward < 0) from = Math.max(from, room / outward);
    if (outward > 0) to = Math.min(to, room / outward);
  }
  return from <= to;
}
