import { droppedBy } from "../../devices";
import type { StillhotDocument } from "../../document";
import { circuitOf, EDGE, edgesAround, floodFrom, reachGraphOf, reachOf, standingOf } from "../../network";
import type { ElementId } from "../../terms";
import { type Opening, openingsOf } from "./openings";

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
  const own = edgesOf(document, element);
  return nextFrom(document, own, sidesOf(document, own).dark);
}

/** Those, on the side of one that has its supply without it, that together take the supply away, each needed for it. */
export function feedersOf(document: StillhotDocument, { element }: Opening): Opening[] {
  const own = edgesOf(document, element);
  const all = nextFrom(document, own, sidesOf(document, own).fed);
  const isDarkWithout = (opened: readonly Opening[]) =>
    sidesOf(document, own, [...own, ...opened.flatMap(({ edges }) => edges)]).fed.length === 0;
  if (!isDarkWithout(all)) return [];
  return all.filter((one) => !isDarkWithout(all.filter((it) => it !== one)));
}

/** Ends of some edges that have a supply, and that have none, where others, or they alone, are open. */
function sidesOf(document: StillhotDocument, edges: readonly number[], opened = edges) {
  const circuit = circuitOf(document.system);
  const { from, to } = reachGraphOf(circuit);
  const { edgeOn, emfOn } = standingOf(circuit);
  const without = edgeOn.slice();
  for (const edge of opened) without[edge] = 0;
  const { how } = reachOf(circuit, { edgeOn: without, emfOn }, { groundsLifted: true });
  const ends = edges.flatMap((edge) => [from[edge]!, to[edge]!]);
  return { dark: ends.filter((node) => how[node] === 0), fed: ends.filter((node) => how[node] !== 0) };
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
  const isOnward = (edge: number) =>
    edgeOn[edge] === 1 && graph.kind[edge] === EDGE.metallic && !own.includes(edge);
  const dropperOf = (edge: number) => {
    const opening = byEdge.get(edge);
    return opening !== undefined && droppedBy(opening) === "load" ? opening : undefined;
  };
  const { nodes } = floodFrom(
    graph,
    start,
    (edge, other) => isOnward(edge) && dropperOf(edge) === undefined && circuit.letterOfNode[other] !== "N",
  );
  const edges = nodes.flatMap((node) => edgesAround(graph, node)).filter(isOnward);
  return [...new Set(edges.flatMap((edge) => dropperOf(edge) ?? []))];
}
