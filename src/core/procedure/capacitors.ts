import type { ElementOfKind } from "../devices";
import type { Step } from "../document";
import { type ConductorId, conductorId, type ElementId, type Letter, lettersOf } from "../terms";
import { islandOf } from "./joined";
import { isLiveState } from "./live";
import { elementsOf } from "./names";
import { seen } from "./seen";
import type { CapacitorCharge, JobState } from "./state";
import { DISCHARGE_SECONDS, trappedVolts } from "./trappedCharge";

type Capacitor = ElementOfKind<"capacitor">;

/** Capacitors of a drawing, by id. */
export const capacitorsOf = ({ document }: JobState): (readonly [ElementId, Capacitor])[] =>
  elementsOf(document.system).filter(
    (it): it is readonly [ElementId, Capacitor] => it[1].kind === "capacitor",
  );

/** Conductors on which a capacitor hangs: those of its phases that are closed. */
export const terminalsOf = ({ at, phases, open }: Capacitor): ConductorId[] =>
  lettersOf(phases)
    .filter((it) => !open.includes(it))
    .map((letter) => conductorId(at, letter as Letter));

/** Volts across one of its units: to the neutral, or between phases. */
export const unitVolts = ({ kvLL, connection }: Capacitor): number =>
  (kvLL * 1000) / (connection === "wye" ? Math.sqrt(3) : 1);

/** How the charge of every capacitor stands after a step. */
export function chargesAfter(before: JobState, after: JobState, step: Step): JobState["capacitors"] {
  const capacitors = capacitorsOf(after);
  if (capacitors.length === 0) return before.capacitors;
  const charges = new Map<ElementId, CapacitorCharge>();
  for (const [id, capacitor] of capacitors) {
    const was = before.capacitors.get(id) ?? firstCharge(before, capacitor);
    charges.set(id, chargeAfter(was, after, capacitor, step));
  }
  return charges;
}

/** The charge of a capacitor as it was found. */
export function firstCharge(state: JobState, capacitor: Capacitor): CapacitorCharge {
  if (isSupplied(state, capacitor)) return { deadSince: null, shorted: false };
  return { deadSince: capacitor.charged ? 0 : -Infinity, shorted: !capacitor.charged };
}

export const chargeOf = (state: JobState, id: ElementId, capacitor: Capacitor): CapacitorCharge =>
  state.capacitors.get(id) ?? firstCharge(state, capacitor);

function chargeAfter(
  was: CapacitorCharge,
  after: JobState,
  capacitor: Capacitor,
  step: Step,
): CapacitorCharge {
  if (isSupplied(after, capacitor)) return { deadSince: null, shorted: false };
  const deadSince = was.deadSince ?? after.elapsedSeconds;
  const waited = after.elapsedSeconds - deadSince >= DISCHARGE_SECONDS;
  // Shorted too early it went off with a bang, and counts as shorted only once it is shorted again.
  const shorted = was.shorted || (waited && step.do === "ground" && isShorted(after, capacitor));
  return { deadSince, shorted };
}

const isSupplied = (state: JobState, capacitor: Capacitor): boolean =>
  terminalsOf(capacitor).some((id) => isLiveState(seen(state).conductors[id]?.state));

/** Whether ground sets hold every terminal of a capacitor. */
function isShorted({ document: { system } }: JobState, capacitor: Capacitor): boolean {
  const held = new Set(
    elementsOf(system).flatMap(([, it]) =>
      it.kind === "ground"
        ? lettersOf(it.phases).map((letter) => islandOf(system, conductorId(it.at, letter)))
        : [],
    ),
  );
  const terminals = terminalsOf(capacitor);
  return terminals.length > 0 && terminals.every((id) => held.has(islandOf(system, id)));
}

/** Volts that a capacitor still holds [V, dc]; 0 while it is supplied, and once it was shorted. */
export function heldVolts(state: JobState, id: ElementId, capacitor: Capacitor): number {
  const { deadSince, shorted } = chargeOf(state, id, capacitor);
  if (deadSince === null || shorted) return 0;
  return trappedVolts(unitVolts(capacitor), state.elapsedSeconds - deadSince);
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
