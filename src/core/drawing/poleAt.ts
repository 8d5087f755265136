import { type Edit, edits, hasPlacedPoints, type StillhotDocument } from "../document";
import { isRefusal } from "../terms";
import { arrangementOf } from "./arrangement";
import type { Scene } from "./scene";
import type { Spot } from "./shapes";

/** Adds a pole that stands at the very spot, whoever placed the others. From then on all stand where they stand. */
export const poleAt =
  (spot: Spot, { way = "across" }: Pick<Scene, "way">): Edit =>
  (before) => {
    if (hasPlacedPoints(before.system)) return edits.addPoint({ ...spot, kind: "pole" })(before);
    const added = edits.addPoint({ kind: "pole" })(before);
    if (isRefusal(added)) return added;
    const lie = { way, text: 1 };
    const spots = new Map<string, Spot>([[added.made![0]!, spot]]);
    const { plates, at } = arrangementOf(before, lie);
    for (const { points } of plates) spots.set(points[0]!, at(points[0]!)!);

    const steps: Edit[] = [() => added];
    let after = added.after;
    // One more pole may turn the line the other way, and every plate with it: then they are put back where they stood.
    for (let round = 0; round < 2; round++) {
      const placed = edits.placeStructures(placesFor(after, lie, spots))(after);
      if (isRefusal(placed)) break;
      steps.push(() => placed);
      ({ after } = placed);
    }
    return edits.together(added.label, steps)(before);
  };

/** Where plates have to lie for the first point of each to come to its spot. */
function placesFor(
  document: StillhotDocument,
  lie: Parameters<typeof arrangementOf>[1],
  spots: ReadonlyMap<string, Spot>,
): Readonly<Record<string, Spot>> {
  const { plates, at } = arrangementOf(document, lie);
  return Object.fromEntries(
    plates.map(({ id, points: [first = ""], box: { left, top } }) => {
      const stands = at(first)!;
      const { x, y } = spots.get(first) ?? stands;
      return [id, { x: left + x - stands.x, y: top + y - stands.y }];
    }),
  );
}
