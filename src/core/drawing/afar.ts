import { deviceOf, isGroundSet, positionOf } from "../devices";
import { complete, savedElement, structureOf, type System } from "../document";
import { type Message, say } from "../terms";
import { symbolLengthAt } from "./arrangement";
import { LEAST_STRUCTURE, LEAST_SYMBOL } from "./tolerances";
import type { Plate } from "./layout/layout";
import type { Scene } from "./scene";

/** Below this scale a drawing that persons placed point by point is shown as lines alone. */
const LINES_BELOW = 0.3;

/** Whether symbols are too small to be read at a scale: a structure is one mark then. */
export const isAfar = (scene: Pick<Scene, "plates" | "text">, scale: number): boolean =>
  scene.plates.length === 0 ? scale < LINES_BELOW : symbolLengthAt(scene, scale) < LEAST_SYMBOL;

/** Whether structures are too near to each other for a mark each: a section is one mark then. */
export const isFurther = (scene: Pick<Scene, "plates" | "text">, scale: number): boolean =>
  scene.plates.length > 1 && symbolLengthAt(scene, scale) < LEAST_STRUCTURE;

/** What is counted beside the mark of a structure. */
export interface Counted {
  readonly open: number;
  readonly tagged: number;
  readonly grounds: number;
}

/** What on a plate is open or lifted, what is tagged or blocked, and where grounds are on. */
export function countedOn(system: System, { points }: Plate): Counted {
  const structure = structureOf(system, points[0]!);
  const counted = { open: 0, tagged: 0, grounds: 0 };
  for (const id of structure?.elements ?? []) {
    const element = complete(savedElement(system.elements, id)!);
    if (isGroundSet(element)) counted.grounds++;
    if (deviceOf(element.kind).ends.length > 1 && positionOf(element) !== undefined) counted.open++;
    if (("tagged" in element && element.tagged) || ("blocked" in element && element.blocked))
      counted.tagged++;
  }
  return counted;
}

/** The words beside a mark; none where there is nothing to count. */
export function wordsOf({ open, tagged, grounds }: Counted, word: (message: Message) => string): string {
  return [
    ...(open === 0 ? [] : [word(say("drawing.countOpen", { count: open }))]),
    ...(tagged === 0 ? [] : [tagged === 1 ? "T" : `${tagged} T`]),
    ...(grounds === 0 ? [] : [word(say("drawing.countGrounds", { count: grounds }))]),
  ].join(" · ");
}
