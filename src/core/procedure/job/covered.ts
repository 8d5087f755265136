import { endsOf } from "../../network";
import { type ConductorId, partsOfConductor } from "../../terms";
import { elementsOf } from "./names";
import type { JobState } from "./state";

/** Whether a conductor is under cover at its point. A thing under cover covers what it carries at both of its ends. */
export function isUnderCover({ covered, document }: JobState, id: ConductorId): boolean {
  if (covered.size === 0) return false;
  const { point, letter } = partsOfConductor(id);
  return (
    covered.has(point) ||
    elementsOf(document.system).some(
      ([element, it]) =>
        covered.has(element) &&
        endsOf(it).some(([, end]) => end === point) &&
        (it as { phases?: string }).phases?.includes(letter),
    )
  );
}
