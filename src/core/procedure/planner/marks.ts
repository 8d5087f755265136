import { couldFeed } from "../../devices";
import { complete, settingsOf, type StillhotDocument } from "../../document";
import { circuitOf, EARTH, EDGE, floodFrom, reachGraphOf, standingOf, tiedNeutrals } from "../../network";
import type { ElementId } from "../../terms";
import { elementsOf } from "../job/names";
import { workedOn } from "./intent";
import type { Choice } from "./search";
import { nodesOfFeeder, wayBetween } from "./ways";

/**
 * Open things of which each would bring a supply to the work when it closed, be it one that runs or one that could start:
 * what the isolation rests on. The rule on tags asks the assessment for it; this is the same from the graph alone, so that
 * an order is right at the first try nearly always.
 */
export function closableOnto(document: StillhotDocument, { ready }: Choice): ElementId[] {
  const circuit = circuitOf(ready);
  const graph = reachGraphOf(circuit);
  const { edgeOn } = standingOf(circuit);
  const { assumeGenerators } = settingsOf(document);
  const worked = workedOn(document).flatMap((id) => circuit.nodeOf.get(id) ?? []);
  const own = joinedTo(worked);
  const feeders = elementsOf(ready).flatMap(([id, it]) => {
    if (!couldFeed(it, assumeGenerators)) return [];
    const nodes = nodesOfFeeder(circuit, id);
    return nodes.some((node) => own.has(node)) ? [] : [{ element: id, nodes }];
  });
  const closable = new Set<ElementId>();
  for (let k = 0; k < circuit.joins.count; k++) {
    const edge = graph.edgeOfJoin[k]!;
    const id = circuit.elementIds[circuit.joins.element[k]!]!;
    if (edge === -1 || circuit.joins.closed[k] === 1 || closable.has(id) || !opens(document, id)) continue;
    const [a, b] = [graph.from[edge]!, graph.to[edge]!];
    const beyond = own.has(a) === own.has(b) ? EARTH : own.has(a) ? b : a;
    if (beyond === EARTH) continue;
    if (wayBetween(circuit, edgeOn, { targets: [beyond], sources: feeders }, new Set()) !== undefined)
      closable.add(id);
  }
  return [...closable].sort();

  function joinedTo(start: readonly number[]): ReadonlySet<number> {
    const tied = tiedNeutrals(circuit, standingOf(circuit));
    const passes = (edge: number, other: number) =>
      edgeOn[edge] === 1 && graph.kind[edge] !== EDGE.ground && tied[other] === 0;
    return new Set(floodFrom(graph, start, passes).nodes);
  }
}

/** Whether it is something that somebody could close: a lead that is cut is not. */
const opens = (document: StillhotDocument, id: ElementId): boolean =>
  "open" in complete(document.system.elements[id]!);
