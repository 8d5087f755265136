import { symbolLengthAt } from "./arrangement";
import type { Scene } from "./scene";
import { LEAST_SYMBOL } from "./tolerances";

/** Below this scale a drawing that persons placed point by point is shown as lines alone. */
const LINES_BELOW = 0.3;

/** Whether symbols are too small to be read at a scale: a structure is one mark then. */
export const isAfar = (scene: Pick<Scene, "plates" | "text">, scale: number): boolean =>
  scene.plates.length === 0 ? scale < LINES_BELOW : symbolLengthAt(scene, scale) < LEAST_SYMBOL;
