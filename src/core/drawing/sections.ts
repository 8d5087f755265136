import { isTransformer, openingOf } from "../devices";
import { complete, endPointsOf, perObject, savedElement, type System } from "../document";
import { Islands } from "../network";

/** The section of each point, by a number: what conductors join, up to whatever opens, open or closed, and to transformers. */
export const sectionsOf = perObject((system: System): ReadonlyMap<string, number> => {
  const points = Object.keys(system.points);
  const numbers = new Map(points.map((id, number) => [id, number]));
  const sections = new Islands(points.length);
  for (const id in system.elements) {
    const saved = savedElement(system.elements, id)!;
    const element = complete(saved);
    if (isTransformer(element) || openingOf(element) !== undefined) continue;
    const [first, ...others] = endPointsOf(saved).map((it) => numbers.get(it)!);
    for (const other of others) sections.join(first!, other);
  }
  return new Map(points.map((id, number) => [id, sections.labelOf(number)]));
});
