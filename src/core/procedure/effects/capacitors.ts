import { elementsOfKind, transformersOf } from "../../document";
import type { ElementOfKind } from "../../devices";
import type { Step } from "../../document";
import { type ConductorId, conductorId, type ElementId, type Letter, lettersOf } from "../../terms";
import { endsOf } from "../../network";
import { islandOf } from "../job/joined";
import { isLiveState } from "../job/live";
import { asItStands } from "../job/seen";
import type { CapacitorCharge, JobState } from "../job/state";
import { DISCHARGE_SECONDS, trappedVolts } from "./trappedCharge";

type Capacitor = ElementOfKind<"capacitor">;

/** Capacitors of a drawing, by id. */
export const capacitorsOf = ({ document }: JobState): readonly (readonly [ElementId, Capacitor])[] =>
  elementsOfKind(document.system, "capacitor");

type Charges = ReadonlyMap<Letter, CapacitorCharge>;

const closedLettersOf = ({ phases, open }: Capacitor): Letter[] =>
  lettersOf(phases).filter((it) => !open.includes(it));

/** Conductors on which a capacitor hangs: those of its phases that are closed. */
export const terminalsOf = (capacitor: Capacitor): ConductorId[] =>
  closedLettersOf(capacitor).map((letter) => conductorId(capacitor.at, letter));

/** Volts across one of its units: to the neutral, or between phases. */
export const unitVolts = ({ kvLL, connection }: Capacitor): number =>
  (kvLL * 1000) / (connection === "wye" ? Math.sqrt(3) : 1);

/** How the charge of every capacitor stands after a step. */
export function chargesAfter(before: JobState, after: JobState, step: Step): JobState["capacitors"] {
  const capacitors = capacitorsOf(after);
  if (capacitors.length === 0) return before.capacitors;
  return new Map(
    capacitors.map(([id, it]) => [id, chargesOfOneAfter(chargesOf(before, id, it), after, it, step)]),
  );
}

/** By the switch as it stood then, which the step at hand may have moved since; by its own where the work just put it in. */
const chargesOf = (state: JobState, id: ElementId, capacitor: Capacitor): Charges =>
  state.capacitors.get(id) ?? firstCharges(state, new Map(capacitorsOf(state)).get(id) ?? capacitor);

/** The charge of each phase as the capacitor was found. */
const firstCharges = (state: JobState, capacitor: Capacitor): Charges =>
  new Map(
    lettersOf(capacitor.phases).map((letter) => [
      letter,
      isSupplied(state, capacitor, letter)
        ? { deadSince: null, shorted: false }
        : { deadSince: capacitor.charged ? 0 : -Infinity, shorted: !capacitor.charged },
    ]),
  );

/** Whether a capacitor, as it was found, has to be shorted before its line counts as dead. */
export const wasFoundCharged = (found: JobState, capacitor: Capacitor): boolean =>
  [...firstCharges(found, capacitor).values()].some((it) => !it.shorted);

const chargesOfOneAfter = (was: Charges, after: JobState, capacitor: Capacitor, step: Step): Charges =>
  new Map(
    lettersOf(capacitor.phases).map((letter) => [
      letter,
      chargeAfter(was.get(letter), after, capacitor, letter, step),
    ]),
  );

function chargeAfter(
  was: CapacitorCharge | undefined,
  after: JobState,
  capacitor: Capacitor,
  letter: Letter,
  step: Step,
): CapacitorCharge {
  if (isSupplied(after, capacitor, letter)) return { deadSince: null, shorted: false };
  const deadSince = was?.deadSince ?? after.elapsedSeconds;
  const waited = after.elapsedSeconds - deadSince >= DISCHARGE_SECONDS;
  // Shorted too early it went off with a bang, and counts as shorted only once it is shorted again.
  const shorted =
    was?.shorted === true || (waited && step.do === "ground" && isShorted(after, capacitor, letter));
  return { deadSince, shorted };
}

const isSupplied = (state: JobState, capacitor: Capacitor, letter: Letter): boolean =>
  !capacitor.open.includes(letter) &&
  isLiveState(asItStands(state).conductors[conductorId(capacitor.at, letter)]?.state);

/** Whether ground sets hold the terminal of one phase of a capacitor. */
function isShorted({ document: { system } }: JobState, capacitor: Capacitor, letter: Letter): boolean {
  if (capacitor.open.includes(letter)) return false;
  const terminal = islandOf(system, conductorId(capacitor.at, letter));
  return elementsOfKind(system, "ground").some(([, it]) =>
    lettersOf(it.phases).some((held) => islandOf(system, conductorId(it.at, held)) === terminal),
  );
}

/** What a capacitor still holds in the phases that are without supply. */
export interface HeldCharge {
  /** the highest of its phases [V, dc] */
  readonly volts: number;
  /** since the last of them lost its supply [s] */
  readonly seconds: number;
}

/** The charge that a capacitor still holds; nothing while its phases are supplied, or once they were shorted. */
export function heldCharge(state: JobState, id: ElementId, capacitor: Capacitor): HeldCharge | undefined {
  const waited = [...chargesOf(state, id, capacitor).values()].flatMap(({ deadSince, shorted }) =>
    deadSince === null || shorted ? [] : [state.elapsedSeconds - deadSince],
  );
  if (waited.length === 0) return undefined;
  const seconds = Math.min(...waited);
  return { volts: trappedVolts(unitVolts(capacitor), seconds), seconds };
}

/** Capacitors that hang on one of these conductors. */
export function capacitorsOn(
  state: JobState,
  conductors: readonly ConductorId[],
): (readonly [ElementId, Capacitor])[] {
  const { system } = state.document;
  const islands = new Set(conductors.map((id) => islandOf(system, id)));
  return capacitorsOf(state).filter(([, it]) =>
    terminalsOf(it).some((id) => islands.has(islandOf(system, id))),
  );
}

/** Whether a capacitor hangs behind its own opening with no transformer and no load beside it, whose windings would drain it. */
export function isByItself(state: JobState, capacitor: Capacitor): boolean {
  const { system } = state.document;
  const islands = new Set(
    lettersOf(capacitor.phases).map((letter) => islandOf(system, conductorId(capacitor.at, letter))),
  );
  return ![...transformersOf(system), ...elementsOfKind(system, "load")].some(([, it]) =>
    lettersOf(it.phases).some((letter) =>
      endsOf(it).some(([, point]) => islands.has(islandOf(system, conductorId(point, letter)))),
    ),
  );
}
