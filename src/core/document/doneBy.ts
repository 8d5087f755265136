import type { ElementId, WorkPointId } from "../terms";
import { elementsOfKind } from "./elements";
import { jobOf } from "./settings";
import type { StillhotDocument, System } from "./types";

/**
 * Elements that the work at a work point makes sound, puts in or takes down: what the job says, and the short that a spike
 * left in a cable there, since whoever works on it cuts that piece out.
 */
export function doneBy(document: StillhotDocument, workPoint: string | undefined): readonly ElementId[] {
  const place = jobOf(document).workPoints[workPoint as WorkPointId];
  if (place === undefined) return [];
  const spiked = elementsOfKind(document.system, "fault").flatMap(([id, { at }]) =>
    OF_A_SPIKE.test(id) && at === place.at ? [id] : [],
  );
  return [...((place.does ?? []) as readonly ElementId[]), ...spiked];
}

const OF_A_SPIKE = /^spike\d+$/;

/** The id of the short that a spike makes next in a drawing. */
export function spikeIdIn({ elements, points }: System): ElementId {
  for (let n = 1; ; n++) {
    const id = `spike${n}`;
    if (!Object.hasOwn(elements, id) && !Object.hasOwn(points, id)) return id as ElementId;
  }
}
