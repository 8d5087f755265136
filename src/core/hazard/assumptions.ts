import { isGroundSet } from "../devices";
import { complete, isSeen } from "../document";
import {
  circuitOf,
  EARTH,
  EDGE,
  edgesAround,
  floodFrom,
  reachGraphOf,
  reachOf,
  standingOf,
} from "../network";
import { conductorId } from "../terms";
import { conductorsOf } from "./outcome";
import type { Question } from "./types";

/** How many things a verdict rests on that nobody has seen or noted. */
export const countAssumptions = (question: Question): number => assumedThings(question).length;

/**
 * Ids of points and elements that the verdict rests on and nobody has seen, and of ground sets whose cable nobody noted:
 * everything joined to the work point, through whatever closes or couples, up to and with the open devices around it.
 */
export function assumedThings({ system, workPoint }: Pick<Question, "system" | "workPoint">): string[] {
  const circuit = circuitOf(system);
  const graph = reachGraphOf(circuit);
  const standing = standingOf(circuit);
  const { tied } = reachOf(circuit, standing, { groundsLifted: false });
  // Work that takes down all that hung at a point leaves it without conductors.
  const start = conductorsOf(workPoint).flatMap(
    (letter) => circuit.nodeOf.get(conductorId(workPoint.at, letter)) ?? [],
  );
  const { nodes } = floodFrom(
    graph,
    start,
    (edge, other) =>
      (standing.edgeOn[edge] === 1 || graph.kind[edge] !== EDGE.metallic) &&
      other !== EARTH &&
      tied[other] === 0,
  );
  const elements = new Set(
    nodes.flatMap((node) => edgesAround(graph, node).map((edge) => graph.element[edge]!)),
  );
  const points = new Set(
    nodes.flatMap((node) => (circuit.pointOfNode[node] === -1 ? [] : [circuit.pointOfNode[node]!])),
  );
  const pointIds = [...points].map((index) => circuit.pointIds[index]!);
  const elementIds = [...elements].map((index) => circuit.elementIds[index]!);
  const guessedCables = elementIds.filter((id) => {
    const it = complete(system.elements[id]!);
    return isGroundSet(it) && it.cable === undefined;
  });
  return [...[...pointIds, ...elementIds].filter((id) => !isSeen(system, id)), ...guessedCables];
}
