import { deviceOf } from "../../devices";
import { completePoint, endPointsOf, perObject, savedElement, type System } from "../../document";

interface Group {
  readonly id: string;
  readonly label: string;
  readonly kind: "pole" | "pad" | "station" | "service";
}

const indexOf = perObject((system: System) => {
  const root = new Map(Object.keys(system.points).map((id) => [id, id]));
  const find = (id: string): string => {
    let at = id;
    while (root.get(at)! !== at) at = root.get(at)!;
    return at;
  };
  const kindOf = (id: string) => completePoint(system.points[id as never]!).kind;
  for (const id of Object.keys(system.elements)) {
    const saved = savedElement(system.elements, id)!;
    if (saved.kind === "span" || deviceOf(saved.kind).ends.length < 2) continue;
    const [first, ...others] = endPointsOf(saved);
    for (const other of others) if (kindOf(first!) === kindOf(other)) root.set(find(other), find(first!));
  }
  const groups = new Map<string, Group>();
  const of = new Map<string, Group>();
  for (const id of Object.keys(system.points)) {
    const key = find(id);
    const group = groups.get(key) ?? { id: key, ...completePoint(system.points[id as never]!), id2: id };
    groups.set(key, group);
    of.set(id, group);
  }
  return { groups, of };
});

export const structuresOf = (system: System): ReadonlyMap<string, Group> => indexOf(system).groups;
export const structureOf = (system: System, id: string): Group | undefined => indexOf(system).of.get(id);
