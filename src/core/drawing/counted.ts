import { deviceOf, isGroundSet, positionOf } from "../devices";
import { complete, savedElement, structureOf, type System } from "../document";
import { type Message, say } from "../terms";
import type { Plate } from "./layout/layout";

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
