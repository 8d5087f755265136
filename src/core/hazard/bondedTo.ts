import { elementOfKind, isSameStructure } from "../document";
import { type Circuit, EARTH } from "../network";
import { conductorId, type PointId } from "../terms";

/**
 * What a worker at a point is bonded to: the point's neutral where that is tied to earth; else the bar of a ground set
 * with a rod and a pole bond on the same structure, of several those at the point itself; else earth. Of several bars the
 * worst counts.
 *
 * @param tied 1 for each node that is a neutral tied to earth
 * @returns nodes, `EARTH` among them; at least one
 */
export function bondedTo(circuit: Circuit, tied: Uint8Array, at: PointId): readonly number[] {
  const neutral = circuit.nodeOf.get(conductorId(at, "N"));
  if (neutral !== undefined && tied[neutral] === 1) return [neutral];
  const bars = barsOf(circuit).filter((it) => isSameStructure(circuit.system, it.at, at));
  const own = bars.filter((it) => it.at === at);
  const nodes = (own.length > 0 ? own : bars).map(({ bar }) => bar);
  return nodes.length > 0 ? nodes : [EARTH];
}

/** Bars of ground sets that have a rod of their own and are bonded to the pole. */
function barsOf(circuit: Circuit): { readonly at: PointId; readonly bar: number }[] {
  return circuit.branches.flatMap(({ element, part, from, to }) => {
    if (part.role !== "ground" || to !== EARTH) return [];
    const set = elementOfKind(circuit.system, circuit.elementIds[element], "ground");
    return set?.poleBond === true ? [{ at: set.at as PointId, bar: from }] : [];
  });
}
