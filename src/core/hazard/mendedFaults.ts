import { isFault, isGroundSet, shortedBy } from "../devices";
import {
  doneBy,
  elementOf,
  jobOf,
  perObject,
  perQuestion,
  type SavedElement,
  settingsOf,
  type StillhotDocument,
  type System,
} from "../document";
import type { ElementId, WorkPointId } from "../terms";
import { MOST_MENDED_IN_ANY_ORDER } from "./tolerances";
import type { Question } from "./types";

/**
 * What is asked about a work point of a job: the drawing as it is, and as it may stand while the works of the job go on. What
 * is cut out and mended under the hands, here or by the crew beside, is no ground set: until it is gone it may hold the line
 * down, and a moment later it does not. The drawing as it is comes first.
 */
export function questionsAbout(document: StillhotDocument, id: WorkPointId): readonly Question[] {
  const { system } = document;
  const question = { system, settings: settingsOf(document), workPoint: jobOf(document).workPoints[id]! };
  return whileMending(question, mendedIn(document));
}

/** All that the works of a job make sound, wherever they are: nobody knows which of them is done first. */
export const mendedIn = perObject((document: StillhotDocument): readonly ElementId[] => {
  const places = Object.keys(jobOf(document).workPoints);
  return [...new Set(places.flatMap((id) => doneBy(document, id)))];
});

/** A question, and the same of every drawing that may stand while these things are mended. */
export function whileMending(question: Question, mended: readonly ElementId[]): readonly Question[] {
  const { system } = question;
  const shorts = mended.filter((id) => isPassingShort(system, id));
  return goneTogether(shorts).map((gone) =>
    gone.length === 0 ? question : { ...question, system: without(system, gone.join()) },
  );
}

/** Whether something holds conductors together that is no ground set: a fault, or what failed. */
export function isPassingShort(system: System, id: ElementId): boolean {
  const element = elementOf(system, id);
  return element !== undefined && !element.planned && shortedBy(element) !== "" && !isGroundSet(element);
}

/**
 * Which of some shorts may be gone together, none of them first. Each of them may feed a conductor that another holds down, so
 * that neither all in place nor all gone need be the worst: of a few every choice is asked. Their number doubles with each
 * short, so of more only all of them, each alone, and all but each.
 */
function goneTogether(shorts: readonly ElementId[]): readonly (readonly ElementId[])[] {
  if (shorts.length <= MOST_MENDED_IN_ANY_ORDER)
    return shorts.reduce<ElementId[][]>((some, id) => [...some, ...some.map((it) => [...it, id])], [[]]);
  return [
    [],
    shorts,
    ...shorts.map((id) => [id]),
    ...shorts.map((left) => shorts.filter((id) => id !== left)),
  ];
}

const without = perQuestion((system: System, ids: string): System => {
  const elements: Record<string, SavedElement> = { ...system.elements };
  for (const id of ids.split(",")) {
    const record = elements[id]!;
    if (isFault(record)) delete elements[id];
    else elements[id] = { ...record, failed: "" };
  }
  return { ...system, elements };
});
