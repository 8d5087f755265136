import { type CircuitElement, isFault } from "../../devices";
import {
  complete,
  doneBy,
  jobOf,
  type SavedElement,
  type Step,
  type StillhotDocument,
  type System,
} from "../../document";
import type { ElementId, JsonObject } from "../../terms";
import { isSwitching } from "../../steps";
import { put } from "./positions";

/** What a step closes or joins: the thing that it switches, or what the work at its place makes whole or puts in. */
export function madeBy(step: Step, document: StillhotDocument): readonly ElementId[] {
  if (step.do === "work") return doneBy(document, step.at);
  return isSwitching(step) ? [step.element] : [];
}

/**
 * The drawing as a work step leaves it: faults that it clears and things that it takes down are gone, what was planned is
 * there, what was parted, cut, blown or failed is whole. Positions stay as they are.
 */
export function systemAfterWork(document: StillhotDocument, { at }: Step): System {
  const { leave } = jobOf(document);
  let { system } = document;
  for (const id of doneBy(document, at)) {
    const saved = Object.hasOwn(system.elements, id) ? system.elements[id]! : undefined;
    if (saved === undefined) continue;
    const element = complete(saved);
    if (isFault(element) || element.leave === "gone" || leave[id] === "gone") system = without(system, id);
    else system = put(system, id, soundKeys(saved, element));
  }
  return system;
}

function without(system: System, id: ElementId): System {
  const { [id]: _gone, ...elements } = system.elements;
  return { ...system, elements };
}

/** Keys that say of a thing that it is not whole, or not yet there. */
const UNSOUND_KEYS = ["planned", "condition", "parted", "cut", "failed", "loose"] as const;

function soundKeys(saved: SavedElement, element: CircuitElement): JsonObject {
  const { blown, open, phases } = element as { blown?: string; open?: string; phases?: string };
  // A blown link drops its barrel: with a new link in, the barrel still hangs open.
  const renewed =
    blown === undefined || blown === ""
      ? {}
      : { blown: "", open: [...phases!].filter((it) => `${open}${blown}`.includes(it)).join("") };
  const mended = UNSOUND_KEYS.filter((key) => saved[key] !== undefined && saved[key] !== "sound");
  return {
    ...renewed,
    ...Object.fromEntries(mended.map((key) => [key, SOUND[key]])),
  };
}

const SOUND = { planned: false, condition: "sound", parted: "", cut: "", failed: "", loose: false } as const;
