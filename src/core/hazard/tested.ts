import { isSameStructure, type System } from "../document";
import { type Step, undoesTests } from "../steps";
import { type ConductorId, conductorId, type Letter, type PointId, type StructureId } from "../terms";

/** What a test that names no phases is of, at whatever point: all that is there. */
const EVERY_CONDUCTOR = "ABC12N";

/**
 * Conductors of a point that count as tested in a file: by a test marked done, with a detector check done before it, and
 * no switching and no ungrounding done after it. A planned test proves nothing.
 */
export function testedConductors(steps: readonly Step[], at: PointId): Set<ConductorId> {
  const tested = new Set<ConductorId>();
  let detectorChecked = false;
  for (const step of steps) {
    if (step.done !== true) continue;
    if (step.do === "check-detector") detectorChecked = true;
    else if (undoesTests(step)) tested.clear();
    else if (step.do === "test" && step.at === at && detectorChecked)
      for (const letter of step.phases ?? EVERY_CONDUCTOR) tested.add(conductorId(at, letter as Letter));
  }
  return tested;
}

/** Points and structures kept clear of people: a barricade that is done. */
export const barricadedPlaces = (steps: readonly Step[]): Set<PointId | StructureId> =>
  new Set(steps.flatMap((step) => (step.do === "barricade" && step.done === true ? [step.at] : [])));

/** Whether people are kept clear of the structure on which a point stands. */
export const isBarricaded = (
  system: System,
  places: Iterable<PointId | StructureId>,
  point: string,
): boolean => [...places].some((place) => isSameStructure(system, place, point));
