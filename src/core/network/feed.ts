import { perObject } from "../document";
import type { Circuit } from "./circuit";
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
