import {
  type Assessment,
  type ConductorId,
  conductorId,
  conductorNames,
  jobOf,
  LETTERS,
  mayBeHot,
  type Message,
  pointsOnStructure,
  type Step,
  type StillhotDocument,
  type WorkPointId,
} from "../../core";

/** What is hot, by the drawing, on the structure at which a step is done; nothing where nothing is. */
export function hotOnStructure(
  assessment: Assessment | undefined,
  document: StillhotDocument,
  step: Step,
): Message | undefined {
  const hot = placesOf(document, step)
    .flatMap((point) => LETTERS.map((letter) => conductorId(point, letter)))
    .filter((id: ConductorId) => mayBeHot(assessment?.conductors[id]?.state));
  return hot.length === 0 ? undefined : conductorNames(document, hot);
}

function placesOf(document: StillhotDocument, { at, element }: Step) {
  const saved = element === undefined ? undefined : document.system.elements[element];
  const ends = saved === undefined ? [] : ["at", "from", "to"].map((end) => saved[end]);
  const workAt = jobOf(document).workPoints[at as WorkPointId]?.at;
  const places = [workAt ?? at, ...ends].filter((it): it is string => typeof it === "string");
  return [...new Set(places.flatMap((it) => pointsOnStructure(document.system, it)))];
}
