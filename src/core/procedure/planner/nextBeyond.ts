import type { DeviceKind } from "../../devices";
import type { StillhotDocument } from "../../document";
import { circuitOf, EDGE, reachGraphOf, standingOf } from "../../network";
import type { ElementId } from "../../terms";
import { type Opening, openingsOf } from "./openings";

/** What drops load, or holds some: a clamp or a lead does not. */
const DROPS: readonly DeviceKind[] = ["cutout", "disconnect", "elbow", "recloser", "breaker", "capacitor"];

/** Things beyond one that may drop load with a tool, nothing of the kind between. */
export function nextBeyond(document: StillhotDocument, element: ElementId): Opening[] {
  const circuit = circuitOf(document.system);
  const { byEdge, all } = openingsOf(document);
  const graph = reachGraphOf(circuit);
  const { edgeOn } = standingOf(circuit);
  const own = all.filter((it) => it.element === element).flatMap(({ edges }) => edges);
  const seenNodes = new Set(own.map((edge) => graph.to[edge]!));
  const queue = [...seenNodes];
  const found = new Set<Opening>();
  for (let head = 0; head < queue.length; head++) {
    const node = queue[head]!;
    for (let at = graph.rowStart[node]!; at < graph.rowStart[node + 1]!; at++) {
      const edge = graph.around[at]! >> 1;
      if (edgeOn[edge] === 0 || graph.kind[edge] !== EDGE.metallic || own.includes(edge)) continue;
      const opening = byEdge.get(edge);
      if (opening !== undefined && DROPS.includes(opening.kind)) {
        found.add(opening);
        continue;
      }
      const other = (graph.around[at]! & 1) === 0 ? graph.to[edge]! : graph.from[edge]!;
      if (circuit.letterOfNode[other] === "N" || seenNodes.has(other)) continue;
      seenNodes.add(other);
      queue.push(other);
    }
  }
  return [...found];
}
