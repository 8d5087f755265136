import { isCable, isFault, isGroundSet } from "../devices";
import { complete, perObject, type System } from "../document";
import { endsOf } from "../network";
import type { ElementId, PointId } from "../terms";

/**
 * Cables that meet at a point where nothing else hangs: a splice, or the hole in which a cable was hit. Nothing is bare there,
 * neither for a detector nor for a clamp; empty at any other point.
 */
export const cablesWithin = (system: System, at: string): readonly ElementId[] =>
  splicesOf(system).get(at as PointId) ?? [];

const splicesOf = perObject((system: System): ReadonlyMap<PointId, readonly ElementId[]> => {
  const cables = new Map<PointId, ElementId[]>();
  const bare = new Set<PointId>();
  for (const id of Object.keys(system.elements) as ElementId[]) {
    const it = complete(system.elements[id]!);
    // What failed in it, what a crew put on and what is still to come are no part of it.
    if (isFault(it) || isGroundSet(it) || it.planned === true) continue;
    for (const [, at] of endsOf(it)) {
      if (isCable(it)) cables.set(at, [...(cables.get(at) ?? []), id]);
      else bare.add(at);
    }
  }
  return new Map([...cables].filter(([at, ids]) => ids.length > 1 && !bare.has(at)));
});
