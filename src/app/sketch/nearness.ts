import {
  elementsAt,
  endPointsOf,
  type ElementId,
  type PointId,
  type StructureId,
  structureOf,
  type System,
} from "../../core";

/** Things that are drawn at one structure. */
export interface AtOne {
  readonly structure: StructureId;
  readonly things: readonly string[];
}

/**
 * Things grouped by the structure that they are on, the nearest to a point first, along whatever joins. A line between two
 * structures stands with the nearer one.
 */
export function byNearness(system: System, from: PointId, things: readonly string[]): AtOne[] {
  const left = new Set(things);
  const groups = new Map<StructureId, string[]>();
  const take = (point: string, thing: string) => {
    const structure = structureOf(system, point)?.id;
    if (structure === undefined || !left.delete(thing)) return;
    groups.set(structure, [...(groups.get(structure) ?? []), thing]);
  };
  const points = new Set<string>([from]);
  for (const point of points) {
    take(point, point);
    for (const id of elementsAt(system).get(point) ?? []) {
      take(point, id);
      for (const end of endPointsOf(system.elements[id as ElementId])) points.add(end);
    }
  }
  return [...groups].map(([structure, those]) => ({ structure, things: those }));
}
