import { canGoOff, type CircuitElement, comesAway, lettersAtEnd, openPhasesOf } from "../../devices";
import {
  doneBy,
  complete,
  jobOf,
  perObject,
  type SavedElement,
  type StillhotDocument,
  type System,
} from "../../document";
import { endsOf } from "../../network";
import { conductorId, type ConductorId, type ElementId, type WorkPointId } from "../../terms";
import { inService, positioned } from "../job/inService";
import { systemAfterWork } from "../job/repair";
import { type Opening, partOf } from "./openings";

/** Ids of elements that the work of a job makes sound, puts in or takes down. */
export const madeSound = perObject(
  (document: StillhotDocument): ReadonlySet<ElementId> =>
    new Set(Object.keys(jobOf(document).workPoints).flatMap((id) => doneBy(document, id))),
);

/**
 * Phase terminals of a thing that hands come to when it is changed or mended. A link is renewed in a barrel that a stick
 * takes out: hands come to no terminal for that.
 */
export function terminalsOfWork(system: System, id: ElementId): ConductorId[] {
  if (!Object.hasOwn(system.elements, id)) return [];
  const element = complete(system.elements[id]!);
  if (isLinkOnly(element)) return [];
  return endsOf(element)
    .filter(([end]) => !(comesAway(element) && end === "from"))
    .flatMap(([end, point]) =>
      lettersAtEnd(element, end)
        .filter((letter) => letter !== "N")
        .map((letter) => conductorId(point, letter)),
    );
}

const isLinkOnly = (element: CircuitElement): boolean =>
  "blown" in element && element.blown !== "" && isSound(element);

const isSound = ({ condition, planned }: SavedElement): boolean =>
  (condition ?? "sound") === "sound" && planned !== true;

/** A drawing as all the work of the job leaves it: faults gone, what was broken made whole; positions stay. */
export const afterWork = (document: StillhotDocument, system: System): System =>
  Object.keys(jobOf(document).workPoints).reduce(
    (left, at) => systemAfterWork({ ...document, system: left }, { do: "work", at: at as WorkPointId }),
    system,
  );

/** The drawing with the work done and the line in service. */
export const goalOf = perObject((document: StillhotDocument): System =>
  inService(document, afterWork(document, document.system)),
);

/** A drawing with everything closed that a crew may close, normally open things too. */
export const allClosed = perObject((document: StillhotDocument): System => {
  const sound = madeSound(document);
  const { leave: left } = jobOf(document);
  const elements: Record<string, SavedElement> = {};
  for (const [id, record] of Object.entries(document.system.elements))
    elements[id] =
      record["tagged"] === true || sound.has(id as ElementId) || left[id] === "open"
        ? record
        : positioned(record, "closed");
  return { ...document.system, elements };
});

/** Whether a thing stands open, or still, on all that an opening opens. */
export const isOff = (system: System, opening: Opening): boolean =>
  offPart(system, opening)?.phases === opening.phases;

/** As much of an opening as stands open, or still, already; nothing where none of it does. */
export function offPart(system: System, opening: Opening): Opening | undefined {
  const record = system.elements[opening.element];
  if (record === undefined) return undefined;
  const it = complete(record);
  if (opening.moves !== "phases") return canGoOff(it) ? undefined : opening;
  const open = openPhasesOf(it);
  return partOf(opening, (letter) => open.includes(letter));
}
