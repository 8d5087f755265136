import type { System } from "../../document";
import { circuitOf, EDGE, floodFrom, REACH, reachGraphOf, reachOf, standingOf } from "../../network";
import type { ConductorId } from "../../terms";

/**
 * Whether the side of an opened gap that is left without supply holds transformers and nothing that draws load, shorts, holds
 * a charge or makes volts: what the gap broke was their exciting current, and what charges their leads.
 */
export function excitesOnly(system: System, sides: readonly ConductorId[]): boolean {
  const circuit = circuitOf(system);
  const { how, tied } = reachOf(circuit, standingOf(circuit), { groundsLifted: false });
  const dead = sides.flatMap((id) => circuit.nodeOf.get(id) ?? []).filter((node) => how[node] === REACH.none);
  if (dead.length === 0) return false;
  const graph = reachGraphOf(circuit);
  const { by } = floodFrom(
    graph,
    dead,
    (edge, other) => (graph.kind[edge] !== EDGE.metallic || graph.on[edge] === 1) && tied[other] === 0,
  );
  const isOnPiece = (node: number): boolean => node >= 0 && by[node] !== -2;
  return (
    circuit.units.some(({ windings }) => windings.flat().some(isOnPiece)) &&
    !circuit.branches.some(({ from, to }) => isOnPiece(from) || isOnPiece(to)) &&
    !circuit.emfs.some(({ legs }) => legs.some((leg) => isOnPiece(leg)))
  );
}
