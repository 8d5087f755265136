import type { DeviceKind } from "../../devices";
import type { StillhotDocument } from "../../document";
import { circuitOf, EDGE, reachGraphOf, reachOf, standingOf } from "../../network";
import type { ElementId } from "../../terms";
import { type Opening, openingsOf } from "./openings";

/** What drops load, or holds some: a clamp or a lead does not. */
const DROPS: readonly DeviceKind[] = ["cutout", "disconnect", "elbow", "recloser", "breaker", "capacitor"];

/** Things beyond one, seen from its `from` end, that may drop load with a tool, nothing of the kind between. */
export function nextBeyond(document: StillhotDocument, element: ElementId): Opening[] {
  const { to } = reachGraphOf(circuitOf(document.system));
  const own = edgesOf(document, element);
  return nextFrom(
    document,
    own,
    own.map((edge) => to[edge]!),
  );
}

/** Things on the side of one that would have no supply without it, that may drop its load with a tool. */
export function droppersOf(document: StillhotDocument, { element }: Opening): Opening[] {
  const circuit = circuitOf(document.system);
  const { from, to } = reachGraphOf(circuit);
  const own = edgesOf(document, element);
  const { edgeOn, emfOn } = standingOf(circuit);
  const without = edgeOn.slice();
  for (const edge of own) without[edge] = 0;
  const { how } = reachOf(circuit, { edgeOn: without, emfOn }, { groundsLifted: true });
  const dark = own.flatMap((edge) => [from[edge]!, to[edge]!]).filter((node) => how[node] === 0);
  return nextFrom(document, own, dark);
}

const edgesOf = (document: StillhotDocument, element: ElementId): number[] =>
  openingsOf(document)
    .all.filter((it) => it.element === element)
    .flatMap(({ edges }) => edges);

function nextFrom(document: StillhotDocument, own: readonly number[], start: readonly number[]): Opening[] {
  const circuit = circuitOf(document.system);
  const { byEdge } = openingsOf(document);
  const graph = reachGraphOf(circuit);
  const { edgeOn } = standingOf(circuit);
  const seenNodes = new Set(start);
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
