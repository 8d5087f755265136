import { broughtBy } from "../devices";
import { type Letter, LETTERS } from "../terms";
import { complete } from "./complete";
import { type TouchedRecords, perDrawing } from "./touched";
import { elementsAt, endPointsOf, savedElement } from "./elementsAt";
import { perObject } from "./perObject";
import type { SavedElement, System } from "./types";

/** What one element brings, as pairs of a point's id and a letter. */
const broughtByRecord = perObject(
  (saved: SavedElement): readonly (readonly [point: string, letter: Letter])[] => {
    const element = complete(saved);
    const ends = element as unknown as Readonly<Record<string, string>>;
    return broughtBy(element).map(([end, letter]) => [ends[end]!, letter] as const);
  },
);

/**
 * The conductors of every point, in the order of `LETTERS`: two-ended elements, transformers and sources bring them;
 * wye loads, wye capacitors and generators bring `N`. A point that nothing touches has none.
 */
export const conductorsOf: (system: System) => ReadonlyMap<string, readonly Letter[]> = perDrawing<
  ReadonlyMap<string, readonly Letter[]>
>((system) => {
  const brought = new Map<string, Set<Letter>>(Object.keys(system.points).map((id) => [id, new Set()]));
  for (const saved of Object.values(system.elements))
    for (const [point, letter] of broughtByRecord(saved)) brought.get(point)?.add(letter);
  return new Map([...brought].map(([point, letters]) => [point, inOrder(letters)]));
}, carried);

/** Letters of a point's phases, those of its neutral left out. */
export const phasesAtPoint = (system: System, at: string): string =>
  (conductorsOf(system).get(at) ?? []).filter((it) => it !== "N").join("");

/** Whether a neutral comes to a point. */
export const hasNeutral = (system: System, at: string): boolean =>
  (conductorsOf(system).get(at) ?? []).includes("N");

const inOrder = (letters: ReadonlySet<Letter>): readonly Letter[] => LETTERS.filter((it) => letters.has(it));

/** Only points whose elements bring something else are looked at again; where none do, it is the same map. */
function carried(
  was: ReadonlyMap<string, readonly Letter[]>,
  before: System,
  after: System,
  { points, elements }: TouchedRecords,
): ReadonlyMap<string, readonly Letter[]> {
  const asked = new Set([...points].filter((id) => was.has(id) !== Object.hasOwn(after.points, id)));
  for (const id of elements) {
    const [had, has] = [before, after].map((it) => savedElement(it.elements, id));
    if (bringsAlike(had, has)) continue;
    for (const point of [...endPointsOf(had), ...endPointsOf(has)]) asked.add(point);
  }
  if (asked.size === 0) return was;
  const conductors = new Map(was);
  for (const point of asked) {
    if (!Object.hasOwn(after.points, point)) {
      conductors.delete(point);
      continue;
    }
    const letters = new Set(
      (elementsAt(after).get(point) ?? []).flatMap((id) =>
        broughtByRecord(savedElement(after.elements, id)!).flatMap(([at, letter]) =>
          at === point ? [letter] : [],
        ),
      ),
    );
    conductors.set(point, inOrder(letters));
  }
  return conductors;
}

function bringsAlike(had: SavedElement | undefined, has: SavedElement | undefined): boolean {
  const text = (saved: SavedElement | undefined) =>
    saved === undefined ? "" : broughtByRecord(saved).join();
  return text(had) === text(has);
}
