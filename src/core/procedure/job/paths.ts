import { circuitOf, pathTo, REACH, reachOf, standingOf } from "../../network";
import { perObject, type System } from "../../document";
import type { ConductorId, ElementId } from "../../terms";
import { elementOf } from "./names";
import { asItStands } from "./seen";
import type { JobState } from "./state";

/** What reaches what in a drawing, ground sets in place. */
export const reachAsDrawn = perObject((system: System) => {
  const circuit = circuitOf(system);
  return { circuit, reach: reachOf(circuit, standingOf(circuit), { groundsLifted: false }) };
});

/** Elements from a supply to a conductor, the supply first; empty where none reaches it. */
export function pathToConductor({ document }: JobState, id: ConductorId): ElementId[] {
  const { circuit, reach } = reachAsDrawn(document.system);
  const node = circuit.nodeOf.get(id);
  return node === undefined || reach.how[node] === 0 ? [] : pathTo(circuit, reach, node);
}

/** Whether all that comes to a conductor comes backwards: through a bank, a load, or from a machine. */
export function isFedBackwards({ document }: JobState, id: ConductorId): boolean {
  const { circuit, reach } = reachAsDrawn(document.system);
  const how = reach.how[circuit.nodeOf.get(id) ?? -1] ?? REACH.none;
  return how !== REACH.none && (how & REACH.forward) === 0;
}

/** What ties the phases of a line together on the way to a conductor: a bank, a unit between phases, a load between them. */
export function bankOnPath(state: JobState, id: ConductorId): ElementId | undefined {
  return pathToConductor(state, id).find((element) => {
    const it = elementOf(state.document.system, element);
    return it !== undefined && "connection" in it && it.phases.length > 1 && !it.phases.includes("1");
  });
}

/** Backfed through a bank from its own other phases, not by another supply. */
export const isFedThroughBank = (state: JobState, id: ConductorId): boolean =>
  asItStands(state).conductors[id]?.state === "backfed" && bankOnPath(state, id) !== undefined;
