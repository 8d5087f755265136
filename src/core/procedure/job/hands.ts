import {
  type AnyTransformer,
  type CircuitElement,
  type End,
  isCable,
  isConductor,
  isFault,
  letterAt,
  lettersAtEnd,
  type LowSide,
  lowSidesOf,
} from "../../devices";
import { doneBy, isSameStructure, jobOf, settingsOf, type Step, type System } from "../../document";
import { circuitOf, endsOf } from "../../network";
import { gloveClassFor } from "../../reference";
import { isHotStick, isLiveWork } from "../../steps";
import {
  type ConductorId,
  conductorId,
  type Letter,
  lettersOf,
  partsOfConductor,
  type WorkPointId,
} from "../../terms";
import { isLiveState } from "./live";
import { elementOf } from "./names";
import { phasesOf } from "./positions";
import { asItStands, seen } from "./seen";
import type { JobState } from "./state";

/** How hands are kept from the conductor that they are on. A stick in hand is a method, said or not. */
export const methodOf = (step: Step): NonNullable<Step["method"]> =>
  step.method ?? (isHotStick(step.with) ? "sticks" : "bare");

/**
 * Conductors that a step has in hand: those that are joined, cut or spliced, at both ends, with all of the bundle of a
 * service; a clamp that is put on or taken off by hand; the jaws of a meter base, whichever way the meter goes; work points under a method of live work.
 * A clamp goes by its stick unless the step says otherwise.
 */
export function conductorsInHand(step: Step, { document }: JobState): ConductorId[] {
  if (step.do === "work")
    return step.method === undefined && !isLiveWork(step) ? [] : workedOn(step, document);
  const element = elementOf(document.system, step.element);
  if (element === undefined || !isByHand(step)) return [];
  const letters = inOneBundle(element, phasesOf(element, step));
  return endsOf(element).flatMap(([end, point]) =>
    letters.map((letter) => conductorId(point, letterAt(element, end, letter))),
  );
}

function isByHand(step: Step): boolean {
  switch (step.do) {
    case "join":
    case "cut":
    case "pull":
    case "replace":
      return true;
    case "attach":
    case "lift":
      return step.method !== undefined || (step.with !== undefined && !isHotStick(step.with));
    default:
      return false;
  }
}

const workedOn = (step: Step, document: JobState["document"]): ConductorId[] => {
  const workPoint = jobOf(document).workPoints[step.at as WorkPointId];
  return workPoint === undefined
    ? []
    : lettersOf(workPoint.conductors).map((letter) => conductorId(workPoint.at, letter as Letter));
};

/** Legs and neutral of a service lie in one hand; on a line each conductor has its own place. */
function inOneBundle(element: CircuitElement, phases: string): Letter[] {
  const { phases: own = "", neutral = false } = element as { phases?: string; neutral?: boolean };
  const letters = lettersOf(own);
  const isService = letters.some((it) => it === "1" || it === "2");
  return isService ? [...letters, ...(neutral ? (["N"] as const) : [])] : ([...phases] as Letter[]);
}

/** Those of them that are live before the step or under it, or that nobody grounded, and the volts to think of. */
export interface HotInHand {
  readonly ids: readonly ConductorId[];
  /** to earth, as things stand [V] */
  readonly volts: number;
  /** that a glove is chosen by: nominal, to ground where one phase alone is in reach [V] */
  readonly nominalVolts: number;
}

/**
 * What a step has in hand that is live before or after it, or that nobody grounded; nothing where all of it is dead and
 * grounded. A neutral counts by its volts alone.
 */
export function hotInHand(step: Step, before: JobState, after: JobState): HotInHand | undefined {
  const { hazardVolts } = settingsOf(before.document);
  const isUngrounded = step.do === "work" && seen(before).workPoints[step.at]?.verdict !== "grounded";
  const voltsOf = (id: ConductorId) =>
    Math.max(asItStands(before).conductors[id]?.volts ?? 0, asItStands(after).conductors[id]?.volts ?? 0);
  const isLive = (id: ConductorId) =>
    [before, after].some((state) => isLiveState(asItStands(state).conductors[id]?.state));
  const ids = conductorsInHand(step, before).filter(
    (id) => isUngrounded || voltsOf(id) >= hazardVolts || (isLive(id) && partsOfConductor(id).letter !== "N"),
  );
  if (ids.length === 0) return undefined;
  const volts = Math.max(...ids.map(voltsOf));
  return { ids, volts, nominalVolts: Math.max(volts, nominalOf(before.document.system, ids)) };
}

function nominalOf(system: System, ids: readonly ConductorId[]): number {
  const circuit = circuitOf(system);
  const lineToLine = Math.max(0, ...ids.map((id) => circuit.nominalVolts[circuit.nodeOf.get(id) ?? -1] ?? 0));
  const letters = new Set(ids.map((id) => partsOfConductor(id).letter));
  const isOnePhase = letters.size === 1 && !letters.has("1") && !letters.has("2");
  return isOnePhase ? lineToLine / Math.sqrt(3) : lineToLine;
}

/** Whether the method of a step keeps hands from so many volts. */
export function isKeptOff(step: Step, nominalVolts: number): boolean {
  const method = methodOf(step);
  if (method === "bare") return false;
  if (method === "sticks") return true;
  const needed = gloveClassFor(nominalVolts);
  return (
    needed !== undefined && (step.gloveClass ?? "") !== "" && rankOf(step.gloveClass!) >= rankOf(needed.name)
  );
}

/** Glove classes from the lightest. */
const rankOf = (name: string): number => ["00", "0", "1", "2", "3", "4"].indexOf(name);

/** Things with terminals that the work at a point is about: what is mended, put in or taken down on its structure. A cable has its own. */
export const devicesWorkedOn = ({ document }: JobState, id: string | undefined): CircuitElement[] => {
  const workPoint = jobOf(document).workPoints[id as WorkPointId];
  if (workPoint === undefined) return [];
  return doneBy(document, id).flatMap((it) => {
    const element = elementOf(document.system, it);
    if (element === undefined || isFault(element) || (isConductor(element) && !isCable(element))) return [];
    const isHere = endsOf(element).some(([, point]) => isSameStructure(document.system, point, workPoint.at));
    return isHere ? [element] : [];
  });
};

/** Conductors of an element's phases, at each of its ends. */
export const phaseConductors = (element: CircuitElement): ConductorId[] =>
  endsOf(element).flatMap(([end, point]) =>
    lettersAtEnd(element, end).map((letter) => conductorId(point, letter)),
  );

/** Which of a thing's own phases is called so at one of its ends; nothing where none is. */
export const phaseCalled = (element: CircuitElement, end: End, letter: Letter): Letter | undefined =>
  lettersAtEnd(element, end).includes(letter)
    ? (lettersOf((element as { phases?: string }).phases ?? "").find(
        (own) => letterAt(element, end, own) === letter,
      ) ?? letter)
    : undefined;

/** Conductors in which the legs of one side of a bank end, so that what hangs on them can be asked for. */
export const legsOf = ({ at, letters }: LowSide): ConductorId[] =>
  letters.map((letter) => conductorId(at, letter));

/** The same of all sides beyond the primary. */
export const secondaryIds = (bank: AnyTransformer): ConductorId[] => lowSidesOf(bank).flatMap(legsOf);
