import { type CircuitElement, openPhasesOf } from "../../devices";
import { brokenThings } from "./inService";
import { elementOf } from "./names";
import type { JobState } from "./state";

/**
 * Whether a thing that trips by itself was found open where its place is closed, and neither anybody's tag or block nor
 * anything broken on the drawing says why: it may have opened on a fault that is there still.
 */
export function mayHaveTripped({ asFound }: Pick<JobState, "asFound">, id: string | undefined): boolean {
  const it = elementOf(asFound.system, id);
  if (it === undefined || !tripsByItself(it) || openPhasesOf(it) === "") return false;
  if (brokenThings(asFound.system).length > 0) return false;
  const { normallyOpen, tagged, blocked } = it as Readonly<Record<string, unknown>>;
  return normallyOpen !== true && tagged !== true && blocked !== true;
}

/** What recloses, or counts the trips of what does. */
const tripsByItself = (element: CircuitElement): boolean => "reclosing" in element || "counts" in element;
