import { isLine } from "../../devices";
import { perObject, type System } from "../../document";
import { circuitOf, EDGE, reachGraphOf } from "../../network";
import type { ConductorId } from "../../terms";
import { elementOf } from "./names";

/** Conductors of a drawing by which are one piece of metal: joined through closed things, but through no length of line. */
const piecesOf = perObject((system: System) => {
  const circuit = circuitOf(system);
  const { edgeCount, from, to, kind, on, element } = reachGraphOf(circuit);
  const piece = Array.from({ length: circuit.conductorIds.length }, (_, node) => node);
  const rootOf = (node: number): number => {
    let root = node;
    while (piece[root] !== root) root = piece[root]!;
    piece[node] = root;
    return root;
  };
  for (let edge = 0; edge < edgeCount; edge++) {
    if (kind[edge] !== EDGE.metallic || on[edge] === 0) continue;
    if (isLine(elementOf(system, circuit.elementIds[element[edge]!]))) continue;
    piece[rootOf(from[edge]!)] = rootOf(to[edge]!);
  }
  return { nodeOf: circuit.nodeOf, rootOf };
});

/**
 * Whether two conductors are one already, as both ends of a bypass or a jumper are: joined at the same place by closed
 * things. What meets over a length of line, or at another station, may have been turned on the way.
 */
export function isOnePiece(system: System, a: ConductorId, b: ConductorId): boolean {
  const { nodeOf, rootOf } = piecesOf(system);
  const [one, other] = [nodeOf.get(a), nodeOf.get(b)];
  return one !== undefined && other !== undefined && rootOf(one) === rootOf(other);
}
