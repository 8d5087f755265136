import { type CircuitElement, isFault } from "../../devices";
import {
  complete,
  jobOf,
  perObject,
  type SavedElement,
  type Step,
  type StillhotDocument,
  type System,
} from "../../document";
import type { ElementId, JsonObject, WorkPointId } from "../../terms";
import { isSwitching } from "../../steps";
import { put } from "./positions";

/**
 * Elements that the work at a work point makes sound, puts in or takes down: what the job says, and the short that a spike
 * left in a cable there, since whoever works on it cuts that piece out.
 */
export function doneBy(document: StillhotDocument, workPoint: string | undefined): readonly ElementId[] {
  const place = jobOf(document).workPoints[workPoint as WorkPointId];
  if (place === undefined) return [];
  const spiked = shortsOfSpikes(document.system).filter(
    (id) => (document.system.elements[id] as { at?: string }).at === place.at,
  );
  return [...((place.does ?? []) as readonly ElementId[]), ...spiked];
}

/** What a step closes or joins: the thing that it switches, or what the work at its place makes whole or puts in. */
export function madeBy(step: Step, document: StillhotDocument): readonly ElementId[] {
  if (step.do === "work") return doneBy(document, step.at);
  return isSwitching(step) ? [step.element] : [];
}

const shortsOfSpikes = perObject(({ elements }: System): readonly ElementId[] =>
  (Object.keys(elements) as ElementId[]).filter((id) => OF_A_SPIKE.test(id) && isFault(elements[id]!)),
);

const OF_A_SPIKE = /^spike\d+$/;

/** The id of the short that a spike makes next in a drawing. */
export function spikeIdIn({ elements, points }: System): ElementId {
  for (let n = 1; ; n++) {
    const id = `spike${n}`;
    if (!Object.hasOwn(elements, id) && !Object.hasOwn(points, id)) return id as ElementId;
  }
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
