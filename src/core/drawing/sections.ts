import { isTransformer, openingOf } from "../devices";
import { complete, endPointsOf, perObject, savedElement, type System } from "../document";

/**
 * The section of each point, by one of its points: what conductors join, up to whatever opens, open or closed, and to
 * transformers.
 */
export const sectionsOf = perObject((system: System): ReadonlyMap<string, string> => {
  const nextOf = new Map<string, string>();
  const sectionOf = (point: string): string => {
    let at = point;
    for (let next; (next = nextOf.get(at)) !== undefined;) at = next;
    // Whoever asks next has a shorter way.
    for (let on = point, next; (next = nextOf.get(on)) !== undefined; on = next) nextOf.set(on, at);
    return at;
  };
  for (const id in system.elements) {
    const saved = savedElement(system.elements, id)!;
    const element = complete(saved);
    if (isTransformer(element) || openingOf(element) !== undefined) continue;
    const [first, ...others] = endPointsOf(saved);
    for (const other of others) {
      const [one, another] = [sectionOf(first!), sectionOf(other)];
      if (one !== another) nextOf.set(another, one);
    }
  }
  return new Map(Object.keys(system.points).map((id) => [id, sectionOf(id)]));
});
