import { perObject } from "../document";
import type { ElementId } from "../terms";
import { type Circuit, EARTH, neutralsOf } from "./circuit";
import { floodFrom, type WalkedGraph } from "./flood";

/** How a source comes to a node. */
export const REACH = {
  none: 0,
  /** by a utility source, directly or forward through transformers */
  forward: 1,
  /** in any other way: backwards through a transformer, across windings, loads, capacitors, or from a generator */
  backfeed: 2,
} as const;

/** What an edge of the graph of conductors is. */
export const EDGE = {
  /** the same conductor, through a closed device or an unparted span */
  metallic: 0,
  /** from a primary terminal of a unit to its own secondary terminals; backfeed the other way */
  forward: 1,
  /** across windings, loads and capacitors */
  coupling: 2,
  /** across the jumpers of a temporary ground set */
  ground: 3,
  /** across a fault */
  fault: 4,
} as const;

/** Every path that there could be, as columns. `on[k]` is 1 where edge k joins as drawn: a device closed, a conductor unparted. */
export interface ReachGraph extends WalkedGraph {
  readonly edgeCount: number;
  readonly kind: Uint8Array;
  readonly on: Uint8Array;
  /** index of the element that the edge belongs to */
  readonly element: Int32Array;
  /** edge of join k */
  readonly edgeOfJoin: Int32Array;
  /** edge of conductor i of stretch k */
  readonly edgesOfStretch: readonly (readonly number[])[];
}

/** The graph of a circuit. Its edges are built once for all circuits that lie alike; which of them join is looked up anew. */
export const reachGraphOf: (circuit: Circuit) => ReachGraph = perObject((circuit: Circuit) => {
  let lay = lays.get(circuit.structure);
  if (lay === undefined) lays.set(circuit.structure, (lay = buildReachGraph(circuit)));
  return { ...lay, on: edgesOn(circuit, lay) };
});

type Lay = Omit<ReachGraph, "on">;
const lays = new WeakMap<object, Lay>();

/** 1 for each edge that joins: joins that are closed, conductors that are not parted, and all that is not a conductor. */
function edgesOn({ joins, stretches }: Circuit, lay: Lay): Uint8Array {
  const on = new Uint8Array(lay.edgeCount).fill(1);
  for (let k = 0; k < joins.count; k++) {
    const edge = lay.edgeOfJoin[k]!;
    if (edge !== -1) on[edge] = joins.closed[k]!;
  }
  stretches.forEach(({ part }, stretch) => {
    if (part.parted.length === 0) return;
    part.letters.forEach((letter, i) => {
      if (part.parted.includes(letter)) on[lay.edgesOfStretch[stretch]![i]!] = 0;
    });
  });
  return on;
}

function buildReachGraph(circuit: Circuit): Lay {
  const from: number[] = [];
  const to: number[] = [];
  const kind: number[] = [];
  const element: number[] = [];
  const add = (a: number, b: number, kindOf: number, ofElement: number): number => {
    from.push(a);
    to.push(b);
    kind.push(kindOf);
    element.push(ofElement);
    return from.length - 1;
  };

  const { joins } = circuit;
  const edgeOfJoin = new Int32Array(joins.count).fill(-1);
  for (let k = 0; k < joins.count; k++)
    if (joins.from[k] !== EARTH && joins.to[k] !== EARTH)
      edgeOfJoin[k] = add(joins.from[k]!, joins.to[k]!, EDGE.metallic, joins.element[k]!);

  const edgesOfStretch = circuit.stretches.map(({ element: of, part, from: a, to: b }) =>
    part.letters.map((_, i) => add(a[i]!, b[i]!, EDGE.metallic, of)),
  );

  for (const { element: of, part, windings } of circuit.units) {
    const primary = [...new Set(windings.slice(0, part.primary.length).flat())].filter((it) => it !== EARTH);
    const secondary = [...new Set(windings.slice(part.primary.length).flat())].filter((it) => it !== EARTH);
    for (const a of primary) for (const b of secondary) if (a !== b) add(a, b, EDGE.forward, of);
    for (const side of [primary, secondary])
      side.forEach((a, i) => side.slice(i + 1).forEach((b) => add(a, b, EDGE.coupling, of)));
  }

  /** nodes that one ground set or fault shorts together are joined through the middle one that they share, or earth */
  const shorted = new Map<number, { kind: number; nodes: number[] }>();
  for (const { element: of, part, from: a, to: b } of circuit.branches) {
    if (part.role === "load" || part.role === "capacitor" || part.role === "star") {
      if (a !== EARTH && b !== EARTH) add(a, b, EDGE.coupling, of);
      continue;
    }
    if (part.role === "output") continue;
    const known = shorted.get(of) ?? { kind: part.role === "ground" ? EDGE.ground : EDGE.fault, nodes: [] };
    known.nodes.push(a, b);
    shorted.set(of, known);
  }
  for (const [of, { kind: shortKind, nodes }] of shorted) {
    const distinct = [...new Set(nodes)].filter((it) => it !== EARTH);
    distinct.forEach((a, i) => distinct.slice(i + 1).forEach((b) => add(a, b, shortKind, of)));
  }

  const nodeCount = circuit.nodeCount;
  const rowStart = new Int32Array(nodeCount + 1);
  for (let k = 0; k < from.length; k++) {
    rowStart[from[k]! + 1]!++;
    rowStart[to[k]! + 1]!++;
  }
  for (let n = 0; n < nodeCount; n++) rowStart[n + 1]! += rowStart[n]!;
  const next = rowStart.slice();
  const around = new Int32Array(2 * from.length);
  for (let k = 0; k < from.length; k++) {
    around[next[from[k]!]!++] = 2 * k;
    around[next[to[k]!]!++] = 2 * k + 1;
  }
  return {
    nodeCount,
    edgeCount: from.length,
    from: Int32Array.from(from),
    to: Int32Array.from(to),
    kind: Uint8Array.from(kind),
    element: Int32Array.from(element),
    rowStart,
    around,
    edgeOfJoin,
    edgesOfStretch,
  };
}

/** What stands in a circuit at one moment: which edges join, which supplies are on. */
export interface Standing {
  readonly edgeOn: Uint8Array;
  readonly emfOn: Uint8Array;
}

/** Neutrals at which a driven ground stands: a point's own, and both ends of a span with rods along it. */
export const rodNodesOf = (circuit: Circuit): number[] => [
  ...circuit.rods.map(({ node }) => node),
  ...circuit.stretches.flatMap((it) => (it.part.rodSiemens > 0 ? neutralsOf(it) : [])),
];

/** The neutral end of every join to earth, and of every driven ground: where a neutral is tied. */
const tiesOf = perObject((circuit: Circuit): Int32Array => {
  const { joins } = circuit;
  const ties = rodNodesOf(circuit);
  for (let k = 0; k < joins.count; k++)
    if (joins.to[k] === EARTH && joins.closed[k] === 1) ties.push(joins.from[k]!);
  // What stands for a part that was cut off holds the neutral of that part, which was tied.
  for (const { part, legs, star } of circuit.emfs)
    if (part.on && star === EARTH)
      part.legs.forEach(({ letter }, leg) => {
        if (letter === "N") ties.push(legs[leg]!);
      });
  return Int32Array.from(ties);
});

/**
 * Marks each neutral that is tied to earth: joined through closed elements and unparted neutrals to an earthed source or
 * a driven ground. Temporary grounds do not count.
 *
 * @returns 1 for each node that is tied, 0 elsewhere; length `nodeCount`
 */
export const tiedNeutrals = (circuit: Circuit, { edgeOn }: Standing): Uint8Array =>
  edgeOn === reachGraphOf(circuit).on ? tiedAsDrawn(circuit) : tiedWhere(circuit, edgeOn);

/** As drawn it is asked by each view, by what a worker is bonded to and by each way to reach. */
const tiedAsDrawn = perObject((circuit: Circuit) => tiedWhere(circuit, reachGraphOf(circuit).on));

function tiedWhere(circuit: Circuit, edgeOn: Uint8Array): Uint8Array {
  const graph = reachGraphOf(circuit);
  const { by } = floodFrom(
    graph,
    tiesOf(circuit),
    (edge, other) =>
      graph.kind[edge] === EDGE.metallic && edgeOn[edge] === 1 && circuit.letterOfNode[other] === "N",
  );
  return Uint8Array.from(by, (edge) => (edge === -2 ? 0 : 1));
}

/** A node as it was reached: node × 2, plus 1 where it is backfeed. */
type Arrival = number;

/** What sources reach; `tied` is 1 for each neutral that is tied to earth. */
export interface Reach {
  /** a set of `REACH` bits for each node */
  readonly how: Uint8Array;
  /** for each arrival the one before it; −1 − k where supply k stands there itself */
  readonly before: Int32Array;
  /** for each arrival the edge it came by */
  readonly by: Int32Array;
  readonly tied: Uint8Array;
}

/** What is left out of a question about reach. */
export interface ReachOptions {
  /** leave the temporary grounds out */
  readonly groundsLifted: boolean;
  /** only what the element of this index supplies */
  readonly onlyFrom?: number;
}

/**
 * Which nodes the sources that are on reach, and how. One breadth-first pass over the columns: forward reach goes its
 * own way, and whatever leaves it by another kind of edge is backfeed. Never through a neutral tied to earth.
 */
export function reachOf(circuit: Circuit, standing: Standing, options: ReachOptions): Reach {
  const { rowStart, around, from, to, kind, nodeCount } = reachGraphOf(circuit);
  const { edgeOn, emfOn } = standing;
  const tied = tiedNeutrals(circuit, standing);
  const how = new Uint8Array(nodeCount);
  const before = new Int32Array(2 * nodeCount);
  const by = new Int32Array(2 * nodeCount);
  const queue = new Int32Array(2 * nodeCount);
  let tail = 0;
  const seed = (node: number, bit: number, emf: number) => {
    if (node === EARTH || tied[node] === 1 || (how[node]! & bit) !== 0) return;
    how[node]! |= bit;
    const arrival: Arrival = 2 * node + (bit === REACH.forward ? 0 : 1);
    before[arrival] = -1 - emf;
    queue[tail++] = arrival;
  };
  circuit.emfs.forEach(({ element, part, legs, star }, emf) => {
    if (emfOn[emf] === 0 || (options.onlyFrom !== undefined && options.onlyFrom !== element)) return;
    const bit = part.role === "generator" ? REACH.backfeed : REACH.forward;
    for (const node of legs) seed(node, bit, emf);
    seed(star, bit, emf);
  });

  for (let head = 0; head < tail; head++) {
    const arrival = queue[head]!;
    const node = arrival >> 1;
    const isForward = (arrival & 1) === 0;
    for (let at = rowStart[node]!, end = rowStart[node + 1]!; at < end; at++) {
      const way = around[at]!;
      const edge = way >> 1;
      if (edgeOn[edge] === 0) continue;
      const edgeKind = kind[edge]!;
      if (edgeKind === EDGE.ground && options.groundsLifted) continue;
      const leaving = (way & 1) === 0;
      const other = leaving ? to[edge]! : from[edge]!;
      if (tied[other] === 1) continue;
      const staysForward =
        isForward && (edgeKind === EDGE.metallic || (edgeKind === EDGE.forward && leaving));
      const bit = staysForward ? REACH.forward : REACH.backfeed;
      if ((how[other]! & bit) !== 0) continue;
      how[other]! |= bit;
      const next: Arrival = staysForward ? 2 * other : 2 * other + 1;
      before[next] = arrival;
      by[next] = edge;
      queue[tail++] = next;
    }
  }
  return { how, before, by, tied };
}

/** The way by which a node was reached: forward if it was reached so at all. */
const arrivalAt = ({ how }: Reach, node: number): Arrival =>
  (how[node]! & REACH.forward) !== 0 ? 2 * node : 2 * node + 1;

/** Elements from the source to a reached node, in order, no two alike in a row; the source's own element comes first. */
export function pathTo(circuit: Circuit, reach: Reach, node: number): ElementId[] {
  const { element } = reachGraphOf(circuit);
  const path: number[] = [];
  let arrival = arrivalAt(reach, node);
  while (reach.before[arrival]! >= 0) {
    const of = element[reach.by[arrival]!]!;
    if (path.at(-1) !== of) path.push(of);
    arrival = reach.before[arrival]!;
  }
  const source = circuit.emfs[-1 - reach.before[arrival]!]!.element;
  if (path.at(-1) !== source) path.push(source);
  return path.reverse().map((index) => circuit.elementIds[index]!);
}

/** Index of the element whose supply first reached a node. */
export function sourceOf(circuit: Circuit, reach: Reach, node: number): number {
  let arrival = arrivalAt(reach, node);
  while (reach.before[arrival]! >= 0) arrival = reach.before[arrival]!;
  return circuit.emfs[-1 - reach.before[arrival]!]!.element;
}
