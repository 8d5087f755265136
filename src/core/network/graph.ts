import { MultiGraph } from "graphology";
import { perObject } from "../document";
import { type Circuit } from "./circuit";
import { EDGE, reachGraphOf } from "./reach";

/** What an edge of the graph is; see `EDGE`. */
export type ConductorEdge = "metallic" | "forward" | "coupling" | "ground" | "fault";

const NAMES: Readonly<Record<number, ConductorEdge>> = {
  [EDGE.metallic]: "metallic",
  [EDGE.forward]: "forward",
  [EDGE.coupling]: "coupling",
  [EDGE.ground]: "ground",
  [EDGE.fault]: "fault",
};

/** What an edge of the graph carries: the id of its element, and whether it joins as drawn. */
export interface ConductorEdgeAttributes {
  readonly element: string;
  readonly kind: ConductorEdge;
  readonly on: boolean;
}

/**
 * The graph of conductors as a graphology multigraph, for paths, explanations and cross-checks: a node for each conductor
 * (`p1/A`) and each node inside an element (`t1#0`), an edge for each way between two. Built when it is asked for.
 */
export const conductorGraphOf: (circuit: Circuit) => MultiGraph<object, ConductorEdgeAttributes> = perObject(
  (circuit: Circuit) => {
    const columns = reachGraphOf(circuit);
    const graph = new MultiGraph<object, ConductorEdgeAttributes>();
    for (let node = 0; node < circuit.nodeCount; node++) graph.addNode(nodeName(circuit, node));
    for (let edge = 0; edge < columns.edgeCount; edge++)
      graph.addEdge(nodeName(circuit, columns.from[edge]!), nodeName(circuit, columns.to[edge]!), {
        element: circuit.elementIds[columns.element[edge]!]!,
        kind: NAMES[columns.kind[edge]!]!,
        on: columns.on[edge] === 1,
      });
    return graph;
  },
);

/** Name of a node in the graph. */
export const nodeName = (circuit: Circuit, node: number): string =>
  circuit.conductorIds[node] ?? `${circuit.elementIds[circuit.ownerOfNode[node]!]!}#${node}`;
