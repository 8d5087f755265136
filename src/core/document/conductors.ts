import { deviceOf } from "../devices";
import { type Letter, LETTERS } from "../terms";
import { complete } from "./complete";
import { perObject } from "./perObject";
import type { SavedElement, System } from "./types";

/** What one element brings, as pairs of a point's id and a letter. */
const broughtBy = perObject((saved: SavedElement): readonly (readonly [point: string, letter: Letter])[] => {
  const element = complete(saved);
  const ends = element as unknown as Readonly<Record<string, string>>;
  return deviceOf(saved.kind)
    .brings(element as never)
    .map(([end, letter]) => [ends[end]!, letter] as const);
});

/**
 * The conductors of every point, in the order of `LETTERS`: two-ended elements, transformers and sources bring them;
 * wye loads, wye capacitors and generators bring `N`. A point that nothing touches has none.
 */
export const conductorsOf: (system: System) => ReadonlyMap<string, readonly Letter[]> = perObject(
  (system: System) => {
    const brought = new Map<string, Set<Letter>>(Object.keys(system.points).map((id) => [id, new Set()]));
    for (const saved of Object.values(system.elements))
      for (const [point, letter] of broughtBy(saved)) brought.get(point)?.add(letter);
    return new Map([...brought].map(([point, letters]) => [point, LETTERS.filter((it) => letters.has(it))]));
  },
);
