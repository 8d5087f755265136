import {
  type ConductorId,
  conductorId,
  conductorNames,
  type JobState,
  jobOf,
  LETTERS,
  mayBeHot,
  type Message,
  pointsOnStructure,
  seen,
  type Step,
  type WorkPointId,
} from "../../core";

/** What is hot, by the drawing, on the structure at which a step is done; nothing where nothing is. */
export function hotOnStructure(state: JobState, step: Step): Message | undefined {
  const { conductors } = seen(state);
  const hot = placesOf(state, step)
    .flatMap((point) => LETTERS.map((letter) => conductorId(point, letter)))
    .filter((id: ConductorId) => mayBeHot(conductors[id]?.state));
  return hot.length === 0 ? undefined : conductorNames(state.document, hot);
}

function placesOf({ document }: JobState, { at, element }: Step) {
  const saved = element === undefined ? undefined : document.system.elements[element];
  const ends = saved === undefined ? [] : ["at", "from", "to"].map((end) => saved[end]);
  const workAt = jobOf(document).workPoints[at as WorkPointId]?.at;
  const places = [workAt ?? at, ...ends].filter((it): it is string => typeof it === "string");
  return [...new Set(places.flatMap((it) => pointsOnStructure(document.system, it)))];
}
