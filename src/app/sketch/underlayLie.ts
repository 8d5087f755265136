import type { Spot } from "../../core";
import { type Camera, type Size, toUnits } from "../canvas/camera";

/** How a picture lies under the drawing, in the drawing's units. */
export interface UnderlayLie {
  /** its middle */
  readonly x: number;
  readonly y: number;
  /** how wide it is */
  readonly breadth: number;
  /** [degrees], clockwise */
  readonly turn: number;
}

/** From a single insulator to a whole county: beyond that a picture could be lost, or never grasped again. */
const [LEAST, MOST] = [10, 200_000];
/** What of the screen a picture that was just chosen takes. */
const OF_THE_SCREEN = 0.9;

/** Where a picture comes to lie: whole, in the middle of what is shown. */
export function lieInView(camera: Camera, size: Size, picture: Size): UnderlayLie {
  const middle = toUnits(camera, size.width / 2, size.height / 2);
  const breadthPx = Math.min(size.width, (size.height * picture.width) / Math.max(1, picture.height));
  return { ...middle, breadth: within((OF_THE_SCREEN * breadthPx) / camera.scale), turn: 0 };
}

/** Moved aside. */
export const movedLie = (lie: UnderlayLie, by: Spot): UnderlayLie => ({
  ...lie,
  x: lie.x + by.x,
  y: lie.y + by.y,
});

/** So many times as large, and turned, about a spot that stays where it is on the picture. */
export function stretchedLie(lie: UnderlayLie, factor: number, turn: number, about: Spot = lie): UnderlayLie {
  const breadth = within(lie.breadth * factor);
  const grown = breadth / lie.breadth;
  const angle = (turn * Math.PI) / 180;
  const [dx, dy] = [(lie.x - about.x) * grown, (lie.y - about.y) * grown];
  return {
    x: about.x + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: about.y + dx * Math.sin(angle) + dy * Math.cos(angle),
    breadth,
    turn: (((lie.turn + turn) % 360) + 360) % 360,
  };
}

/** A lie as it was kept; nothing where it is none. */
export function readLie(kept: unknown): UnderlayLie | undefined {
  if (typeof kept !== "object" || kept === null) return undefined;
  const { x, y, breadth, turn } = kept as Record<string, unknown>;
  if (!isNumber(x) || !isNumber(y) || !isNumber(breadth) || !isNumber(turn)) return undefined;
  return breadth < LEAST || breadth > MOST ? undefined : { x, y, breadth, turn };
}

const within = (breadth: number): number => Math.min(MOST, Math.max(LEAST, breadth));

const isNumber = (it: unknown): it is number => typeof it === "number" && Number.isFinite(it);
