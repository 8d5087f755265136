import { type CircuitElement, letterAt, openPhasesOf } from "../../devices";
import { endsOf } from "../../network";
import { conductorId, lettersOf } from "../../terms";
import { brokenThings } from "./inService";
import { elementOf } from "./names";
import { asItStands } from "./seen";
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
  return normallyOpen !== true && tagged !== true && blocked !== true && !isBetweenSupplies(asFound, it);
}

/** Whether both sides of what is open are energized: a line that another supply has taken over holds no fault. */
function isBetweenSupplies(asFound: JobState["asFound"], it: CircuitElement): boolean {
  const { conductors } = asItStands({ document: asFound });
  return lettersOf(openPhasesOf(it)).every((letter) =>
    endsOf(it).every(
      ([end, at]) => conductors[conductorId(at, letterAt(it, end, letter))]?.state === "energized",
    ),
  );
}

/** What recloses, or counts the trips of what does. */
const tripsByItself = (element: CircuitElement): boolean => "reclosing" in element || "counts" in element;
