import { deviceOf } from "../../devices";
import { completePoint, perObject, type System } from "../../document";
import { endsOf } from "../../network";
import type { PointId } from "../../terms";
import { elementsOf } from "./names";

/**
 * Which points stand on one structure: joined by anything but a length of line, and of the same kind. A cutout's top and
 * its bottom are one pole; a meter between a pole and a house joins two places.
 */
const structuresOf = perObject((system: System): ReadonlyMap<string, string> => {
  const root = new Map(Object.keys(system.points).map((id) => [id, id]));
  const find = (id: string): string => {
    let at = id;
    while (root.get(at)! !== at) at = root.get(at)!;
    return at;
  };
  const kindOf = (id: PointId) => completePoint(system.points[id]!).kind;
  for (const [, element] of elementsOf(system)) {
    if (element.kind === "span" || deviceOf(element.kind).ends.length < 2) continue;
    const [first, ...others] = endsOf(element).map(([, point]) => point);
    for (const other of others) if (kindOf(first!) === kindOf(other)) root.set(find(other), find(first!));
  }
  return new Map([...root.keys()].map((id) => [id, find(id)]));
});

export const isSameStructure = (system: System, a: string, b: string): boolean =>
  structuresOf(system).get(a) === structuresOf(system).get(b);

/** Every point on the structure of one, itself too. */
export function pointsOnStructure(system: System, point: string): PointId[] {
  const structures = structuresOf(system);
  const own = structures.get(point);
  return [...structures].filter(([, it]) => it === own).map(([id]) => id as PointId);
}
