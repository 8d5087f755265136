/** What is walked over: edge k joins `from[k]` and `to[k]`, and around each node its edges stand in compressed rows. */
export interface WalkedGraph {
  readonly nodeCount: number;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly rowStart: Int32Array;
  /** edges around a node: 2k for edge k leaving its `from`, 2k + 1 for edge k entering its `to` */
  readonly around: Int32Array;
}

/** What a walk came to. */
export interface Flood {
  /** nodes that were reached, in the order of the walk: the seeds, then always the nearest */
  readonly nodes: readonly number[];
  /** for each node the edge by which it was first reached: −1 at a seed, −2 where the walk did not come; length `nodeCount` */
  readonly by: Int32Array;
}

/**
 * Walks from some nodes over every edge that passes, the nearest first.
 *
 * @param seeds  nodes from which it starts
 * @param passes whether it goes over an edge to the node at its other end; not asked where it has been
 * @param until  ends it at the first node of which this is so, the last of `nodes` then
 */
export function floodFrom(
  graph: WalkedGraph,
  seeds: Iterable<number>,
  passes: (edge: number, other: number) => boolean,
  until?: (node: number) => boolean,
): Flood {
  const { nodeCount, rowStart, around } = graph;
  const by = new Int32Array(nodeCount).fill(-2);
  const nodes: number[] = [];
  for (const node of seeds) {
    if (by[node] !== -2) continue;
    by[node] = -1;
    nodes.push(node);
  }
  for (let head = 0; head < nodes.length; head++) {
    const node = nodes[head]!;
    if (until?.(node)) return { nodes: nodes.slice(0, head + 1), by };
    for (let at = rowStart[node]!, end = rowStart[node + 1]!; at < end; at++) {
      const edge = around[at]! >> 1;
      const other = otherEnd(graph, edge, node);
      if (by[other] !== -2 || !passes(edge, other)) continue;
      by[other] = edge;
      nodes.push(other);
    }
  }
  return { nodes, by };
}

/** Edges from a node of a flood back to the seed from which it was reached. */
export function wayBack(graph: WalkedGraph, { by }: Flood, node: number): number[] {
  const edges: number[] = [];
  for (let at = node; by[at] !== -1; at = otherEnd(graph, edges.at(-1)!, at)) edges.push(by[at]!);
  return edges;
}

/** Edges around a node. */
export const edgesAround = ({ rowStart, around }: WalkedGraph, node: number): number[] =>
  Array.from(around.subarray(rowStart[node], rowStart[node + 1]), (way) => way >> 1);

/** The node at the other end of an edge around one. */
const otherEnd = ({ from, to }: WalkedGraph, edge: number, node: number): number =>
  from[edge] === node ? to[edge]! : from[edge]!;
