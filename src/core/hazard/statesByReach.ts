import { perObject, settingsOf, type StillhotDocument, type System } from "../document";
import {
  type Circuit,
  circuitAtHand,
  circuitOf,
  REACH,
  reachOf,
  type Standing,
  standingOf,
} from "../network";
import { codeOf, type StateColumn } from "./stateColumn";
import { metallicIslands, shortsOf } from "./view";

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

/** Whether two drawings are known to stand alike, whatever they look like on the paper: then so do their states. */
export function standsAlike(one: StillhotDocument, other: StillhotDocument): boolean {
  if (one === other) return true;
  if (settingsOf(one).hazardVolts !== settingsOf(other).hazardVolts) return false;
  if (one.system === other.system) return true;
  const [a, b] = [circuitAtHand(one.system), circuitAtHand(other.system)];
  return a !== undefined && a.values === b?.values;
}

const byReach = perObject((circuit: Circuit): StateColumn => {
  const standing = standingOf(circuit);
  const reach = reachOf(circuit, standing, { groundsLifted: false });
  const isShorted = shortedNodes(circuit, standing, reach.tied);
  const states = new Uint8Array(circuit.conductorCount);
  for (let node = 0; node < circuit.conductorCount; node++) {
    const how = reach.how[node]!;
    if (reach.tied[node] === 1 && circuit.letterOfNode[node] === "N") states[node] = codeOf.neutral;
    else if (how === REACH.none) states[node] = codeOf.unknown;
    else if (isShorted(node)) states[node] = codeOf.faulted;
    else states[node] = (how & REACH.forward) !== 0 ? codeOf.energized : codeOf.backfed;
  }
  return { ids: circuit.conductorIds, states };
});

/** Whether a node is joined to a ground set or a fault. Islands are told only where there is one. */
function shortedNodes(circuit: Circuit, standing: Standing, tied: Uint8Array): (node: number) => boolean {
  if (!circuit.branches.some(({ part }) => part.role === "ground" || part.role === "fault"))
    return () => false;
  const islands = metallicIslands(circuit, standing);
  const { anyGround, faulted } = shortsOf(circuit, islands, tied);
  return (node) => faulted.has(islands[node]!) || anyGround.has(islands[node]!);
}
