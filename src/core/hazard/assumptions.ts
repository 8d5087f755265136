import { complete, evidenceOf } from "../document";
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

/**
 * How many points and elements the verdict rests on that nobody has seen, and ground sets whose cable nobody noted: everything joined to the work point, through
 * whatever closes or couples, up to and with the open devices around it.
 */
export function countAssumptions({ system, workPoint }: Question): number {
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
  const unseenPoints = [...points].filter((index) => evidenceOf(system, circuit.pointIds[index]!) !== "seen");
  const unseenElements = [...elements].filter(
    (index) => evidenceOf(system, circuit.elementIds[index]!) !== "seen",
  );
  const guessedCables = [...elements].filter((index) => {
    const it = complete(system.elements[circuit.elementIds[index]!]!);
    return it.kind === "ground" && it.cable === undefined;
  });
  return unseenPoints.length + unseenElements.length + guessedCables.length;
}
