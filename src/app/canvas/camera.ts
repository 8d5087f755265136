import type { Box } from "../../core";

/** How the drawing lies on the screen: screen = unit × scale + offset. */
export interface Camera {
  readonly x: number;
  readonly y: number;
  readonly scale: number;
}

/** How large the canvas is [px]. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A large feeder fits whole at this scale [px per unit]. */
export const LEAST_SCALE = 0.002;
const MOST_SCALE = 4;

/** A spot on the screen as one on the drawing, in its units. */
export const toUnits = ({ x, y, scale }: Camera, screenX: number, screenY: number) => ({
  x: (screenX - x) / scale,
  y: (screenY - y) / scale,
});

/** Moved so that the spot (x, y) of the drawing lies at (screenX, screenY). */
export const showing = (
  { scale }: Camera,
  [x, y]: readonly [number, number],
  screenX: number,
  screenY: number,
): Camera => ({ scale, x: screenX - x * scale, y: screenY - y * scale });

/** What of the drawing is in view. */
export const viewOf = (camera: Camera, { width, height }: Size): Box => {
  const { x: left, y: top } = toUnits(camera, 0, 0);
  const { x: right, y: bottom } = toUnits(camera, width, height);
  return { left, top, right, bottom };
};

/** Zooms so that the spot of the drawing under (screenX, screenY) stays there. */
export function zoomedAt(camera: Camera, factor: number, screenX: number, screenY: number): Camera {
  const scale = Math.max(LEAST_SCALE, Math.min(MOST_SCALE, camera.scale * factor));
  const { x, y } = toUnits(camera, screenX, screenY);
  return showing({ ...camera, scale }, [x, y], screenX, screenY);
}

/** What the row of zoom buttons takes from a drawing [px]. */
export const ZOOM_BUTTONS = 70;
/** How much of that the buttons themselves cover, over which nothing is written [px]. */
export const COVERED = 58;

/** Screen beside the drawing that labels need [px]. */
interface Overhang {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
const NO_OVERHANG: Overhang = { left: 0, top: 0, right: 0, bottom: 0 };

/**
 * On a phone a drawing reaches from the edge of what is above it to the buttons, so that a loop of pads is whole there. On the smallest ones that
 * would leave its flags no room for what is to be done: it is read part by part [px].
 */
const PHONE = { from: 375, top: 5, bottom: 66 };

/** Shows a whole box, with room for the labels around it, and never closer than one and a half. */
export function fitted(box: Box, { width, height }: Size, overhang: Overhang = NO_OVERHANG): Camera {
  const isNarrow = width < 600;
  const isPhone = isNarrow && width >= PHONE.from;
  const margin = isNarrow ? 14 : 28;
  const most = width * (isNarrow ? 0.12 : 0.24);
  const [left, right] = [margin + Math.min(most, overhang.left), margin + Math.min(most, overhang.right)];
  const [top, bottom] = [
    (isPhone ? PHONE.top : margin) + Math.min(80, overhang.top),
    Math.max(isPhone ? PHONE.bottom : ZOOM_BUTTONS, COVERED + 2 + Math.min(80, overhang.bottom)),
  ];
  const scale = Math.max(
    LEAST_SCALE,
    Math.min(
      1.5,
      (width - left - right) / Math.max(1, box.right - box.left),
      (height - top - bottom) / Math.max(1, box.bottom - box.top),
    ),
  );
  const spare = width - left - right - (box.right - box.left) * scale;
  // No drawing is made smaller for all that stands beside it; but what its height leaves of the width is theirs.
  const more = [margin + overhang.left - left, margin + overhang.right - right] as const;
  const given = Math.min(1, Math.max(0, spare) / Math.max(1, more[0] + more[1]));
  return {
    scale,
    x: left + (spare + (more[0] - more[1]) * given) / 2 - box.left * scale,
    y: top + (height - top - bottom) / 2 - ((box.top + box.bottom) / 2) * scale,
  };
}

/** Room between the edge of the screen and a drawing that goes on beyond another edge [px]. */
const EDGE = 8;

/** What is cut by an edge of the screen comes wholly into view where it is out of that by no more [px]. */
const NEARLY = 60;

/** Moves as little as needed so that no empty screen lies beside a drawing of which a part is out of view, and little of it is cut. */
export function broughtIn(camera: Camera, box: Box, { width, height }: Size): Camera {
  const along = (offset: number, from: number, to: number, first: number, last: number) => {
    const [low, high] = [from * camera.scale, to * camera.scale];
    if (high - low <= last - first) return (first + last - low - high) / 2;
    if (first - low - offset < NEARLY) return first - low;
    return offset + high - last < NEARLY ? last - high : offset;
  };
  return {
    scale: camera.scale,
    x: along(camera.x, box.left, box.right, EDGE, width - EDGE),
    y: along(camera.y, box.top, box.bottom, EDGE, height - ZOOM_BUTTONS),
  };
}

/** Whether all of a box lies within another. */
export const contains = (outer: Box, inner: Box): boolean =>
  outer.left <= inner.left &&
  outer.top <= inner.top &&
  outer.right >= inner.right &&
  outer.bottom >= inner.bottom;
