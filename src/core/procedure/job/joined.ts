import { perObject, type System } from "../../document";
import { metallicIslands } from "../../hazard/view";
import { circuitOf, EDGE, floodFrom, reachGraphOf, standingOf, tiedNeutrals } from "../../network";
import type { ConductorId, ElementId } from "../../terms";

/** The conductors of a drawing by which are one: joined through closed things and unparted spans. */
const islandsOf = perObject((system: System) => {
  const circuit = circuitOf(system);
  return { circuit, labels: metallicIslands(circuit, standingOf(circuit)) };
});

/** The same number for conductors that are joined through closed things and unparted spans; −1 for one that is not there. */
export function islandOf(system: System, id: ConductorId): number {
  const { circuit, labels } = islandsOf(system);
  const node = circuit.nodeOf.get(id);
  return node === undefined ? -1 : labels[node]!;
}

/** Every conductor that is joined to one of these, themselves too. */
export function joinedTo(system: System, ids: readonly ConductorId[]): ReadonlySet<ConductorId> {
  const { circuit, labels } = islandsOf(system);
  const wanted = new Set(ids.map((id) => islandOf(system, id)));
  wanted.delete(-1);
  return new Set(circuit.conductorIds.filter((_, node) => wanted.has(labels[node]!)));
}

/** Whether metal joins two conductors as things stand. */
export const isJoined = (system: System, a: ConductorId, b: ConductorId): boolean =>
  islandOf(system, a) !== -1 && islandOf(system, a) === islandOf(system, b);

/** The same as if one element were not there: what lies beyond it, if one begins at its far end. */
export function joinedWithout(
  system: System,
  ids: readonly ConductorId[],
  without: ElementId,
): ReadonlySet<ConductorId> {
  const { circuit } = islandsOf(system);
  const graph = reachGraphOf(circuit);
  const left = circuit.elementIds.indexOf(without);
  const { nodes } = floodFrom(
    graph,
    ids.flatMap((id) => circuit.nodeOf.get(id) ?? []),
    (edge) => graph.kind[edge] === EDGE.metallic && graph.on[edge] === 1 && graph.element[edge] !== left,
  );
  return new Set(nodes.flatMap((node) => circuit.conductorIds[node] ?? []));
}

/**
 * The nodes of a drawing to which anything leads from these: closed things and unparted spans, windings, loads, shorts; but no
 * neutral that is tied to earth.
 */
export function coupledNodes(system: System, seeds: readonly number[]): readonly number[] {
  const { circuit } = islandsOf(system);
  const graph = reachGraphOf(circuit);
  const tied = tiedNeutrals(circuit, standingOf(circuit));
  return floodFrom(
    graph,
    seeds.filter((node) => tied[node] === 0),
    (edge, other) => (graph.kind[edge] !== EDGE.metallic || graph.on[edge] === 1) && tied[other] === 0,
  ).nodes;
}

/** Whether anything leads from one of some conductors to one of others. */
export function isCoupled(
  system: System,
  ids: readonly ConductorId[],
  others: readonly ConductorId[],
): boolean {
  const { nodeOf } = islandsOf(system).circuit;
  const nodesOf = (some: readonly ConductorId[]) => some.flatMap((id) => nodeOf.get(id) ?? []);
  const reached = new Set(coupledNodes(system, nodesOf(others)));
  return nodesOf(ids).some((node) => reached.has(node));
}
