import { NO_AMPS } from "../tolerances";
import {
  type Breaks,
  breaksOf,
  type CircuitElement,
  type End,
  handlingOf,
  hangs,
  letterAt,
} from "../../devices";
import {
  complete,
  jobOf,
  perObject,
  type SavedElement,
  settingsOf,
  type StillhotDocument,
  structureOf,
  type System,
} from "../../document";
import { ampsAtPoint, elementAmps, solutionOf, voltsAt } from "../../phasor";
import { circuitOf, endsOf, groupsAsDrawn, REACH, reachOf, standingOf, UTILITY } from "../../network";
import {
  complex,
  conductorId,
  type ElementId,
  isRefusal,
  type Letter,
  type PointId,
  type StructureId,
} from "../../terms";
import { LEAST_ARC_VOLTS } from "../effects/breaking";
import { joinedWithout } from "../job/joined";
import { systemAfter } from "../job/positions";
import { distanceBetween } from "./distance";
import { type Opening, stepOff } from "./openings";
import { toolFor } from "../job/tools";

/** An opening in its turn: what it breaks there, and the tool for it. */
export interface TimedOpening {
  readonly opening: Opening;
  readonly amps: number;
  readonly tool: string | undefined;
}

/** Whether a set of openings can be made one after the other with nothing breaking more than it may. */
export interface OpeningOrder {
  readonly order: readonly TimedOpening[];
  /** what is left that nothing here may break as things then stand */
  readonly stuck: readonly Opening[];
  /** the drawing after what could be opened */
  readonly after: System;
}

/** The largest current in the phases of an opening as a system stands [A]. */
export function ampsOf(system: System, { element, phases }: Opening): number {
  const circuit = circuitOf(system);
  const index = circuit.elementIds.indexOf(element);
  const [[, point] = ["from", ""]] = endsOf(complete(system.elements[element]!));
  const pointIndex = circuit.pointIds.indexOf(point as PointId);
  const own = ampsAtPoint(circuit, ampsIn(system), index, pointIndex);
  return Math.max(0, ...[...phases].map((it) => complex.magnitude(own[it as Letter] ?? complex.zero)));
}

const known = new WeakMap<System, ReturnType<typeof elementAmps>>();
function ampsIn(system: System): ReturnType<typeof elementAmps> {
  let amps = known.get(system);
  if (amps === undefined) known.set(system, (amps = elementAmps(solutionOf(circuitOf(system)))));
  return amps;
}

/** What an opening may break with the tool that the crew would take, and that tool. */
export function limitOf(
  document: StillhotDocument,
  opening: Opening,
  amps: number,
): { readonly limit: Breaks; readonly tool: string | undefined } {
  const element = complete(document.system.elements[opening.element]!);
  const tool = toolFor(element, jobOf(document).tools, amps > NO_AMPS);
  const settings = settingsOf(document);
  const limit = breaksOf(element, tool ?? "", settings) ?? {
    amps: handlingOf(element)?.moves === "machine" ? Infinity : settings.clampBreakAmps,
    basis: "unrated" as const,
  };
  return { limit, tool };
}

/** What hangs on the line goes first, and comes back last: a machine is never closed in on out of step. */
const isTakenOffFirst = ({ opening }: { readonly opening: Opening }): boolean => hangs(opening);

/**
 * How much of the line an opening leaves to machines that run with no station behind them: what parts one from the line comes
 * before what parts the line from its station.
 */
function runningAlone(opening: Opening, system: System): number {
  if (machinesInStep(system).size === 0) return 0;
  const circuit = circuitOf(systemWithout(system, opening));
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return how.reduce((sum, it) => sum + (it !== 0 && (it & REACH.forward) === 0 ? 1 : 0), 0);
}

/** Machines that run in step with a station. */
export const machinesInStep = perObject((system: System): ReadonlySet<ElementId> => {
  const circuit = circuitOf(system);
  const { ofEmf } = groupsAsDrawn(circuit);
  const inStep = [...ofEmf].filter(
    ([emf, group]) => group === UTILITY && circuit.emfs[emf]!.part.role === "generator",
  );
  return new Set(inStep.map(([emf]) => circuit.elementIds[circuit.emfs[emf]!.element]!));
});

/** Made to break load, or nothing flows: opened before what is not. */
const isMadeForIt = ({ basis }: Breaks, amps: number): boolean =>
  amps <= NO_AMPS || ["tool", "arc-chute", "rated", "made-for-load"].includes(basis);

/**
 * Puts openings in an order in which each breaks no more than it may: those first that are asked to be, then what is made
 * to break load, then what the first have left without load; the nearest one where it does not matter.
 *
 * @param first keys of openings that come before all others, as far as they may
 * @param endAt a structure on which nothing is opened as long as something else can be
 */
export function orderOpenings(
  document: StillhotDocument,
  openings: readonly Opening[],
  first: ReadonlySet<string> = new Set(),
  endAt?: StructureId,
): OpeningOrder {
  let system = document.system;
  const left = [...openings];
  const order: TimedOpening[] = [];
  let here: string | undefined;
  while (left.length > 0) {
    const ready = left
      .map((opening) => {
        const amps = ampsOf(system, opening);
        return { opening, amps, ...limitOf(document, opening, amps) };
      })
      .filter(({ opening, amps, limit }) => amps <= limit.amps || breaksNothing(system, opening, amps))
      .map((it) => ({
        ...it,
        rank: [
          first.has(it.opening.key) ? 0 : 1,
          isTakenOffFirst(it) ? 0 : 1,
          runningAlone(it.opening, system),
          endAt !== undefined && structureOf(document.system, it.opening.element)?.id === endAt ? 1 : 0,
          it.opening.element === order.at(-1)?.opening.element ? 0 : 1,
          it.amps > it.limit.amps && isRemadeByHand(document.system, it.opening) ? 0 : 1,
          isMadeForIt(it.limit, it.amps) && it.amps > NO_AMPS ? 0 : 1,
          here === undefined ? 0 : distanceBetween(document.system, here, it.opening.at),
        ],
      }))
      .sort((a, b) => compareRanks(a.rank, b.rank) || (a.opening.key < b.opening.key ? -1 : 1));
    const [next] = ready;
    if (next === undefined) break;
    order.push({ opening: next.opening, amps: next.amps, tool: next.tool });
    left.splice(left.indexOf(next.opening), 1);
    here = next.opening.at;
    system = systemWithout(system, next.opening);
  }
  return { order, stuck: left, after: system };
}

/**
 * Whether nothing flows, or another path beside an opening, or another supply behind a lead, holds its gap at no volts: there
 * is nothing to keep an arc.
 */
export function breaksNothing(system: System, opening: Opening, amps: number): boolean {
  return amps <= NO_AMPS || isBesidePath(system, opening) || isHeldFromBothSides(system, opening);
}

function isBesidePath(system: System, { element, phases }: Opening): boolean {
  const opened = complete(system.elements[element]!);
  const ends = endsOf(opened);
  const [[, from] = ["", ""], [, to] = ["", ""]] = ends;
  return (
    ends.length === 2 &&
    phases !== "" &&
    [...phases].every((letter) =>
      joinedWithout(system, [conductorId(from as PointId, letter as Letter)], element).has(
        conductorId(to as PointId, letterAt(opened, "to", letter as Letter)),
      ),
    )
  );
}

/**
 * A lead between two transformers: with both of them on, next to no volts stand across it once all of it is cut. One leg
 * alone would tell nothing, since the other holds it through the winding.
 */
function isHeldFromBothSides(system: System, opening: Opening): boolean {
  if (!isRemadeByHand(system, opening)) return false;
  const lead = complete(system.elements[opening.element]!) as CircuitElement & { readonly phases: string };
  const circuit = circuitOf(systemWithout(system, { ...opening, phases: lead.phases }));
  const solution = solutionOf(circuit);
  const voltsOf = (end: End, point: string, letter: Letter) => {
    const node = circuit.nodeOf.get(conductorId(point, letterAt(lead, end, letter)));
    return node === undefined ? complex.zero : voltsAt(solution, node);
  };
  return [...lead.phases].every((letter) => {
    const [from, to] = endsOf(lead).map(([end, point]) => voltsOf(end, point, letter as Letter));
    return complex.magnitude(complex.subtract(from!, to!)) < LEAST_ARC_VOLTS;
  });
}

/** Leads: cut while both transformers hold them, and remade when both are on again, so that no hand energizes a bank. */
const isRemadeByHand = (system: System, { element }: Opening): boolean =>
  handlingOf(complete(system.elements[element]!))?.on === "join";

/** Whether openings can be made in this very order, each breaking no more than it may. */
export function canOpenInOrder(document: StillhotDocument, openings: readonly Opening[]): boolean {
  let { system } = document;
  return openings.every((opening) => {
    const amps = ampsOf(system, opening);
    const isMade =
      breaksNothing(system, opening, amps) || amps <= limitOf(document, opening, amps).limit.amps;
    system = systemWithout(system, opening);
    return isMade;
  });
}

/** Which of two ranks comes first: by the first number in which they differ. */
export function compareRanks(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return a[i]! - b[i]!;
  return 0;
}

/** The drawing after one opening. */
export function systemWithout(system: System, opening: Opening): System {
  const after = systemAfter(system, stepOff(system, opening, opening.phases, undefined));
  return isRefusal(after) ? system : after;
}

/** The drawing with some keys of elements changed. */
export function withKeys(
  system: System,
  changes: ReadonlyMap<ElementId, Readonly<Record<string, boolean>>>,
): System {
  const elements: Record<string, SavedElement> = { ...system.elements };
  for (const [id, keys] of changes) elements[id] = { ...elements[id]!, ...keys };
  return { ...system, elements };
}
