import { isLoad, isMachine, isSupply } from "../../devices";
import { complete, perObject } from "../../document";
import {
  type Circuit,
  EARTH,
  EDGE,
  floodFrom,
  REACH,
  reachGraphOf,
  reachOf,
  standingOf,
  tiedNeutrals,
  wayBack,
} from "../../network";
import { conductorId, type ElementId, lettersOf } from "../../terms";
import type { Opening } from "./openings";

/** Two sets of conductors between which no way may be left. */
export interface Separation {
  /** what it is about, so that it is asked for once */
  readonly name: string;
  /** what is to be dead */
  readonly targets: readonly number[];
  /** what feeds it: nodes of each supply, or of whatever might become one */
  readonly sources: readonly { readonly element: ElementId; readonly nodes: readonly number[] }[];
  /** only along one and the same conductor: what windings and loads carry across does not count */
  readonly metallicOnly?: boolean;
  /** a machine that is stopped may be started again: it counts as running */
  readonly evenStopped?: boolean;
}

/** How strictly a gap, a supply that is off or a parted conductor is taken. The strict way is tried first. */
export interface Strictness {
  /** a gap that nobody can see is none */
  readonly visibleGaps: boolean;
  /** a parted conductor may touch again, and a supply that is off may come back: both count as there */
  readonly asRestored: boolean;
}

/** Every opening to be seen, and everything left as it was found. */
export const STRICTEST: Strictness = { visibleGaps: true, asRestored: true };

/** A way from a supply to what is to be dead: the edges from the target outward. */
export interface SupplyPath {
  readonly source: ElementId;
  readonly edges: readonly number[];
}

/** Which edges conduct when nothing of the plan is open yet, as strictly as asked. */
export function edgesTaken(circuit: Circuit, strictness: Strictness): Uint8Array {
  const edges = standingOf(circuit).edgeOn.slice();
  const graph = reachGraphOf(circuit);
  if (strictness.asRestored)
    circuit.stretches.forEach(({ part }, stretch) =>
      part.letters.forEach((letter, i) => {
        if (letter !== "N" && part.parted.includes(letter)) edges[graph.edgesOfStretch[stretch]![i]!] = 1;
      }),
    );
  if (strictness.visibleGaps)
    for (let k = 0; k < circuit.joins.count; k++) {
      const edge = graph.edgeOfJoin[k]!;
      if (edge !== -1 && circuit.joins.closed[k] === 0 && hasHiddenGap(circuit, circuit.joins.element[k]!))
        edges[edge] = 1;
    }
  return edges;
}

function hasHiddenGap({ system, elementIds }: Circuit, index: number): boolean {
  return (complete(system.elements[elementIds[index]!]!) as { visibleGap?: boolean }).visibleGap === false;
}

/** Supplies of a drawing that can feed as it stands: those that are on, and, where asked, utility sources and drawn machines that are off. */
export function suppliesOf(circuit: Circuit, { asRestored }: Strictness): Separation["sources"] {
  return circuit.emfs.flatMap(({ element, part, legs, star }) => {
    const id = circuit.elementIds[element]!;
    const it = circuit.system.elements[id];
    return part.on || (asRestored && (isSupply(it) || isMachine(it)))
      ? [{ element: id, nodes: [...legs, star] }]
      : [];
  });
}

/** Nodes of one element that can feed: of a supply, or of a load whose owner may have one. */
export function nodesOfFeeder(circuit: Circuit, id: ElementId): number[] {
  const index = circuit.elementIds.indexOf(id);
  return [
    ...circuit.emfs.filter(({ element }) => element === index).flatMap(({ legs, star }) => [...legs, star]),
    ...circuit.branches
      .filter(({ element, part }) => element === index && part.role === "load")
      .flatMap(({ from, to }) => [from, to]),
  ].filter((node) => node !== EARTH);
}

/**
 * The shortest way from any supply to any target, or undefined where every way is open. Like reach it never passes
 * through a neutral that is tied to earth. A supply that the plan stops feeds nothing.
 */
export function wayBetween(
  circuit: Circuit,
  edgeOn: Uint8Array,
  { targets, sources, metallicOnly, evenStopped }: Omit<Separation, "name">,
  stopped: ReadonlySet<ElementId>,
): SupplyPath | undefined {
  const graph = reachGraphOf(circuit);
  const tied = tiedNeutrals(circuit, standingOf(circuit));
  const sourceAt = new Map<number, ElementId>();
  for (const { element, nodes } of sources)
    if (evenStopped === true || !stopped.has(element))
      for (const node of nodes) if (node !== EARTH && tied[node] === 0) sourceAt.set(node, element);
  if (sourceAt.size === 0) return undefined;
  const flood = floodFrom(
    graph,
    targets.filter((node) => tied[node] === 0),
    (edge, other) =>
      edgeOn[edge] === 1 &&
      graph.kind[edge] !== EDGE.ground &&
      (metallicOnly !== true || graph.kind[edge] === EDGE.metallic) &&
      tied[other] === 0,
    (node) => sourceAt.has(node),
  );
  const last = flood.nodes.at(-1);
  const source = last === undefined ? undefined : sourceAt.get(last);
  return source === undefined ? undefined : { source, edges: wayBack(graph, flood, last!) };
}

/** Customers without supply, and which of them cannot do without. */
export interface CustomersOut {
  readonly count: number;
  readonly critical: readonly ElementId[];
}

/** Loads of customers, each with the nodes of its conductors. */
const customersOf = perObject((circuit: Circuit) =>
  circuit.elementIds.flatMap((id) => {
    const it = complete(circuit.system.elements[id]!);
    if (!isLoad(it) || it.customers === 0) return []; // only a load says whether it is critical
    const nodes = lettersOf(it.phases).flatMap(
      (letter) => circuit.nodeOf.get(conductorId(it.at, letter)) ?? [],
    );
    return [{ id, nodes, customers: it.customers, critical: it.critical }];
  }),
);

/** Customers whose service has not every conductor from the utility when these edges conduct; a machine is no supply. */
export function customersOutOf(circuit: Circuit, edgeOn: Uint8Array): CustomersOut {
  const { emfOn } = standingOf(circuit);
  const { how } = reachOf(circuit, { edgeOn, emfOn }, { groundsLifted: true });
  const out = customersOf(circuit).filter(
    ({ nodes }) => !nodes.every((node) => (how[node]! & REACH.forward) !== 0),
  );
  return {
    count: out.reduce((sum, { customers }) => sum + customers, 0),
    critical: out.filter(({ critical }) => critical).map(({ id }) => id),
  };
}

/** The edges of a circuit as drawn, those of some openings open and those of some others closed. */
export function edgesWith(
  circuit: Circuit,
  opened: readonly Opening[],
  closed: readonly Opening[] = [],
): Uint8Array {
  const edgeOn = standingOf(circuit).edgeOn.slice();
  for (const { edges } of closed) for (const edge of edges) edgeOn[edge] = 1;
  for (const { edges } of opened) for (const edge of edges) edgeOn[edge] = 0;
  return edgeOn;
}
