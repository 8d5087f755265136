import { broughtBy, type CircuitElement } from "../devices";
import { complete, perObject } from "../document";
import { conductorId } from "../terms";
import { type Circuit, endsOf } from "./circuit";
import { reachGraphOf, reachOf } from "./reach";

/**
 * Phase conductors that no source on the drawing could ever reach, by any kind of reach, even with everything open closed,
 * everything parted joined, every source on and temporary grounds lifted: their feed was left out. Customers' machines and
 * circuits nearby are no feed.
 *
 * @returns 1 for each such conductor, 0 elsewhere; length `nodeCount`
 */
export const feedNotDrawn: (circuit: Circuit) => Uint8Array = perObject((circuit: Circuit) => {
  const everything = {
    edgeOn: new Uint8Array(reachGraphOf(circuit).edgeCount).fill(1),
    emfOn: Uint8Array.from(circuit.emfs, ({ part }) => (part.role === "utility" ? 1 : 0)),
  };
  const { how } = reachOf(circuit, everything, { groundsLifted: true });
  return Uint8Array.from(circuit.letterOfNode, (letter, node) =>
    node < circuit.conductorCount && letter !== "N" && how[node] === 0 ? 1 : 0,
  );
});

/** Conductors that nothing but what is still to be put in ends on: nobody finds them on the pole. */
export const conductorsToCome: (circuit: Circuit) => ReadonlySet<number> = perObject((circuit: Circuit) => {
  const all = Object.values(circuit.system.elements).map((it) => complete(it));
  const nodesOf = (elements: readonly CircuitElement[]) =>
    elements.flatMap((it) => {
      const ends = new Map(endsOf(it));
      return broughtBy(it).map(([end, letter]) => circuit.nodeOf.get(conductorId(ends.get(end)!, letter))!);
    });
  const toCome = new Set(nodesOf(all.filter((it) => it.planned)));
  if (toCome.size > 0) for (const node of nodesOf(all.filter((it) => !it.planned))) toCome.delete(node);
  return toCome;
});
