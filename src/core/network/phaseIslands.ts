import { perObject } from "../document";
import { type Circuit, EARTH } from "./circuit";
import { Islands } from "./islands";
import { EDGE, reachGraphOf } from "./reach";

/** Labels every node with the phases that closed elements, unparted spans and transformers join it to as drawn. Neutrals join nothing. */
export const phaseIslands: (circuit: Circuit) => Int32Array = perObject((circuit: Circuit) => {
  const { edgeCount, from, to, kind, on } = reachGraphOf(circuit);
  const islands = new Islands(circuit.nodeCount);
  for (let edge = 0; edge < edgeCount; edge++)
    if (kind[edge] === EDGE.metallic && on[edge] === 1 && isPhase(circuit, from[edge]!))
      islands.join(from[edge]!, to[edge]!);
  for (const { windings } of circuit.units) {
    const phases = windings.flat().filter((node) => isPhase(circuit, node));
    for (const node of phases) islands.join(phases[0]!, node);
  }
  return islands.labels();
});

/** Whether a node is a phase conductor: neither earth nor a neutral. */
export const isPhase = ({ letterOfNode }: Circuit, node: number): boolean =>
  node !== EARTH && letterOfNode[node] !== "N";
