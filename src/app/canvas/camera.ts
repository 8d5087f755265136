import type { Box } from "../../core";

/** How the drawing lies on the screen: screen = unit × scale + offset. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export const LEAST_SCALE = 0.04;
export const MOST_SCALE = 4;

export const toUnits = ({ x, y, scale }: Camera, screenX: number, screenY: number) => ({
  x: (screenX - x) / scale,
  y: (screenY - y) / scale,
});

export const toScreen = (camera: Camera, x: number, y: number) => ({
  x: x * camera.scale + camera.x,
  y: y * camera.scale + camera.y,
});

/** What of the drawing is in view. */
export const viewOf = (camera: Camera, { width, height }: Size): Box => {
  const { x: left, y: top } = toUnits(camera, 0, 0);
  const { x: right, y: bottom } = toUnits(camera, width, height);
  return { left, top, right, bottom };
};

/** Zooms so that the spot of the drawing under (screenX, screenY) stays there. */
export function zoomedAt(camera: Camera, factor: number, screenX: number, screenY: number): Camera {
  const scale = Math.max(LEAST_SCALE, Math.min(MOST_SCALE, camera.scale * factor));
  const spot = toUnits(camera, screenX, screenY);
  return { scale, x: screenX - spot.x * scale, y: screenY - spot.y * scale };
}

/** Shows a whole box, with a margin for the labels around it, and never closer than one to one and a half. */
export function fitted(box: Box, { width, height }: Size): Camera {
  const margin = width < 600 ? 28 : 72;
  const scale = Math.max(
    LEAST_SCALE,
    Math.min(
      1.5,
      (width - 2 * margin) / Math.max(1, box.right - box.left),
      (height - 2 * margin) / Math.max(1, box.bottom - box.top),
    ),
  );
  return {
    scale,
    x: width / 2 - ((box.left + box.right) / 2) * scale,
    y: height / 2 - ((box.top + box.bottom) / 2) * scale,
  };
}
