import { isSupply } from "../devices";
import { elementsAt, endPointsOf, savedElement } from "./elementsAt";
import { perObject } from "./perObject";
import type { System } from "./types";

/** How many elements lie between each point and the nearest source; points that no source is joined to are not in it. */
export const hopsFromSource: (system: System) => ReadonlyMap<string, number> = perObject((system: System) =>
  hopsFrom(
    system,
    Object.values(system.elements).flatMap((it) => (isSupply(it) ? endPointsOf(it) : [])),
  ),
);

/** Every point that is joined to some, with how many elements lie between. */
export function hopsFrom(system: System, starts: readonly string[]): ReadonlyMap<string, number> {
  const at = elementsAt(system);
  const hops = new Map(starts.map((id) => [id, 0]));
  const queue = [...hops.keys()];
  for (let next = 0; next < queue.length; next++) {
    const here = queue[next]!;
    for (const id of at.get(here) ?? [])
      for (const far of endPointsOf(savedElement(system.elements, id)))
        if (!hops.has(far)) {
          hops.set(far, hops.get(here)! + 1);
          queue.push(far);
        }
  }
  return hops;
}
