import {
  type CircuitElement,
  deviceOf,
  isGroundSet,
  isLine,
  openPhasesOf,
  shortedBy,
  letterAt,
} from "../../devices";
import {
  complete,
  jobOf,
  type LeftAs,
  perObject,
  type SavedElement,
  type StillhotDocument,
  type System,
} from "../../document";
import { circuitOf, endsOf, reachOf, standingOf } from "../../network";
import { conductorId, type ConductorId, type ElementId, type Letter, lettersOf } from "../../terms";
import { elementsOf } from "./names";

/**
 * The drawing in service, as a job is to leave it: each device that opens at its normal position, links renewed, or as
 * the job's `leave` says. What carries somebody's tag stays as it was found, and so do machines and sources.
 *
 * @param system the drawing from which to start: as found, or as the work leaves it
 */
export function inService(document: StillhotDocument, system: System): System {
  const { leave: left } = jobOf(document);
  const elements: Record<string, SavedElement> = {};
  for (const [id, record] of Object.entries(system.elements))
    elements[id] = isTagged(document, id) && left[id] === undefined ? record : positioned(record, left[id]);
  return { ...system, elements };
}

const isTagged = ({ system }: StillhotDocument, id: string): boolean =>
  system.elements[id as ElementId]?.["tagged"] === true;

/** A record at its normal position or the one that is asked for; one that does not open as it is. */
export function positioned(record: SavedElement, wanted?: LeftAs): SavedElement {
  if (!Object.hasOwn(deviceOf(record.kind).fields, "open")) return record;
  const { open: _open, blown: _blown, removed: _removed, ...rest } = record;
  const { phases, normallyOpen } = complete(record) as { phases: string; normallyOpen?: boolean };
  const isOpen = wanted === "open" || (wanted === undefined && normallyOpen === true);
  return isOpen ? { ...rest, open: phases } : rest;
}

/** What is broken on a drawing, each with its phase conductors, onto which nothing may be closed. */
export const brokenThings = (system: System): (readonly [ElementId, readonly ConductorId[]])[] =>
  elementsOf(system).flatMap(([id, it]) => {
    const ids = brokenOf(it);
    return ids.length === 0 ? [] : [[id, ids] as const];
  });

/** Ends of all that is broken on a drawing, onto which nothing may be closed. */
export const brokenConductors = (system: System): ConductorId[] =>
  brokenThings(system).flatMap(([, ids]) => ids);

/**
 * Ends of all onto which nothing may be closed: of what is broken, and of the ground sets that were found on and still are.
 * Whoever put one on is at work behind it, or nobody knows yet that he is not. A set of the job's own comes off first.
 */
export const notToBeEnergized = (asFound: System, system: System): ConductorId[] => [
  ...brokenConductors(system),
  ...groundSetsFound(asFound, system).flatMap(([, ids]) => ids),
];

/** The ground sets that were found on and still are, each with its phase conductors. */
export const groundSetsFound = (
  asFound: System,
  system: System,
): (readonly [ElementId, readonly ConductorId[]])[] =>
  elementsOf(system).flatMap(([id, it]) =>
    isGroundSet(it) && Object.hasOwn(asFound.elements, id)
      ? [[id, lettersOf(it.phases).map((letter) => conductorId(it.at, letter))] as const]
      : [],
  );

function brokenOf(it: CircuitElement): ConductorId[] {
  // A ground set holds its conductors on purpose: it is nothing broken.
  if ("at" in it && !isGroundSet(it))
    return lettersOf(shortedBy(it)).map((letter) => conductorId(it.at, letter));
  // A lead that is cut hangs where it was cut; what a span lets fall lies anywhere.
  if (!isLine(it)) return [];
  return lettersOf(it.parted)
    .filter((letter: Letter) => letter !== "N")
    .flatMap((letter) => [conductorId(it.from, letter), conductorId(it.to, letterAt(it, "to", letter))]);
}

/**
 * Phases of a thing that stand otherwise than they are to be left. What would put volts on something broken, or on a ground
 * set that was found on, when it closed stays open, and what hangs on a part without supply may; what is normally open may stay closed while it is the only
 * supply of what it feeds.
 *
 * @param asFound the job's document before its first step
 * @param system the drawing as it stands
 */
export function phasesElsewhere(asFound: StillhotDocument, system: System, id: ElementId): string {
  const record = system.elements[id]!;
  const wanted = inServiceOf(asFound).elements[id];
  if (wanted === undefined || !Object.hasOwn(deviceOf(record.kind).fields, "open")) return "";
  const [is, goal] = [openPhasesOf(complete(record)), openPhasesOf(complete(wanted))];
  const { phases } = complete(record) as { phases: string };
  const elsewhere = [...phases].filter((it) => is.includes(it) !== goal.includes(it)).join("");
  if (elsewhere === "") return "";
  const isOpen = [...elsewhere].some((it) => is.includes(it));
  const notToBe = notToBeEnergized(asFound.system, system);
  const openedByCrew = isOpen && wasClosed(asFound, id, elsewhere) && !wakes(notToBe, system, id, wanted);
  const isWanted = isOpen ? isWorthClosing(notToBe, system, id, wanted) : canDoWithout(system, id, wanted);
  return openedByCrew || isWanted ? elsewhere : "";
}

const inServiceOf = perObject((document: StillhotDocument) => inService(document, document.system));

/** Whether a thing is left open on some phases. */
export const isLeftOpen = (asFound: StillhotDocument, id: string, phases: string): boolean => {
  const left = inServiceOf(asFound).elements[id as ElementId];
  return left !== undefined && [...phases].every((it) => openPhasesOf(complete(left)).includes(it));
};

/** Whether something comes to life when a thing closes, and nothing does that is not to. */
function isWorthClosing(
  notToBe: readonly ConductorId[],
  system: System,
  id: ElementId,
  closed: SavedElement,
): boolean {
  const live = liveIn(system);
  if (wakes(notToBe, system, id, closed)) return false;
  return liveIn(moved(system, id, closed)).size > live.size || isLiveAround(system, id, live);
}

/** Whether one of some conductors comes to life when a thing closes. */
function wakes(some: readonly ConductorId[], system: System, id: ElementId, closed: SavedElement): boolean {
  const [live, lives] = [liveIn(system), liveIn(moved(system, id, closed))];
  return some.some((it) => lives.has(it) && !live.has(it));
}

/** Whether a thing was found closed on these phases: what the crew opens on a dead part it closes again. */
function wasClosed({ system }: StillhotDocument, id: ElementId, phases: string): boolean {
  const found = system.elements[id];
  return found !== undefined && [...phases].every((it) => !openPhasesOf(complete(found)).includes(it));
}

const moved = (system: System, id: ElementId, record: SavedElement): System => ({
  ...system,
  elements: { ...system.elements, [id]: record },
});

/** Whether everything stays supplied when a thing opens. */
const canDoWithout = (system: System, id: ElementId, opened: SavedElement): boolean =>
  liveIn(moved(system, id, opened)).size === liveIn(system).size;

/** Live at every end already: a ring that is to be closed, a capacitor on a line. */
function isLiveAround(system: System, id: ElementId, live: ReadonlySet<ConductorId>): boolean {
  const element = complete(system.elements[id]!) as CircuitElement & { readonly phases: string };
  return [...element.phases].some((letter) =>
    endsOf(element).every(([end, point]) =>
      live.has(conductorId(point, letterAt(element, end, letter as Letter))),
    ),
  );
}

const liveIn = perObject((system: System): ReadonlySet<ConductorId> => {
  const circuit = circuitOf(system);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return new Set(circuit.conductorIds.filter((_, node) => how[node] !== 0));
});
