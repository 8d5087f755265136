import { perObject, type System } from "../document";
import { type Circuit, circuitAtHand, circuitOf, REACH, reachOf, standingOf } from "../network";
import type { ConductorId } from "../terms";
import type { Assessment, ConductorState } from "./types";
import { metallicIslands, shortsOf } from "./view";

/** A state, or that it is not known yet, which is to be taken for hot. */
export type KnownState = ConductorState | "unknown";

/** Every word for a state, at the place that stands for it in columns. */
export const KNOWN_STATES: readonly KnownState[] = [
  "unknown",
  "faulted",
  "energized",
  "backfed",
  "induced",
  "grounded",
  "isolated",
  "neutral",
];
const codeOf = Object.fromEntries(KNOWN_STATES.map((it, code) => [it, code])) as Record<KnownState, number>;

/** States of conductors as columns: one row each, in the order of their ids. */
export interface StateColumn {
  /** the same list for drawings with the same conductors, as far as that is told */
  readonly ids: readonly ConductorId[];
  /** places in `KNOWN_STATES` */
  readonly states: Uint8Array;
}

/**
 * What reach alone tells of the states, before there are volts. What a source reaches counts as hot until volts say
 * otherwise, and what none reaches is not known: it may be induced.
 */
export const statesByReach = (system: System): StateColumn => byReach(circuitOf(system));

/** The same, where it takes no longer than a frame however large the drawing. */
export function statesAtHand(system: System): StateColumn | undefined {
  const circuit = circuitAtHand(system);
  return circuit === undefined ? undefined : byReach(circuit);
}

const byReach = perObject((circuit: Circuit): StateColumn => {
  const standing = standingOf(circuit);
  const reach = reachOf(circuit, standing, { groundsLifted: false });
  const islands = metallicIslands(circuit, standing);
  const { anyGround, faulted } = shortsOf(circuit, islands, reach.tied);
  const hasShorts = anyGround.size + faulted.size > 0;
  const isShorted = (island: number) => faulted.has(island) || anyGround.has(island);
  const states = new Uint8Array(circuit.conductorCount);
  for (let node = 0; node < circuit.conductorCount; node++) {
    const how = reach.how[node]!;
    if (reach.tied[node] === 1 && circuit.letterOfNode[node] === "N") states[node] = codeOf.neutral;
    else if (how === REACH.none) states[node] = codeOf.unknown;
    else if (hasShorts && isShorted(islands[node]!)) states[node] = codeOf.faulted;
    else states[node] = (how & REACH.forward) !== 0 ? codeOf.energized : codeOf.backfed;
  }
  return { ids: circuit.conductorIds, states };
});

/** What may still be said of states after an edit that was not looked at yet: what was hot counts as hot, nothing else is known. */
export const statesUntold = ({ ids, states }: StateColumn): StateColumn => ({
  ids,
  states: states.map((code) => (isHot(KNOWN_STATES[code]!) ? code : codeOf.unknown)),
});

const isHot = (state: KnownState): boolean =>
  state === "energized" || state === "backfed" || state === "induced" || state === "faulted";

/** The states of an assessment as a column. */
export const stateColumn: (conductors: Assessment["conductors"]) => StateColumn = perObject(
  (conductors: Assessment["conductors"]) => {
    const ids = Object.keys(conductors) as ConductorId[];
    return { ids, states: Uint8Array.from(ids, (id) => codeOf[conductors[id]!.state]) };
  },
);
