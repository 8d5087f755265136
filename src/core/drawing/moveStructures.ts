import { type Edit, edits, type StillhotDocument, structureOf } from "../document";
import { arrangementOf } from "./arrangement";
import type { Spot } from "./shapes";
import type { Scene } from "./scene";

/**
 * Moves the structures that some points are on. From then on all stand where they stand: the drawing is the person's.
 *
 * @param by   how far, in the drawing's units
 * @param grid spacing that they are snapped to; 0 for none
 */
export function moveStructures(
  document: StillhotDocument,
  { way = "across" }: Pick<Scene, "way">,
  points: readonly string[],
  by: Spot,
  grid = 0,
): Edit {
  const { system } = document;
  // Placed by hand they keep their places at every size of the picture: with room for letters as large as they get.
  const { plates } = arrangementOf(document, { way, text: 1 });
  const moving = new Set(points.map((it) => structureOf(system, it)?.id as string | undefined));
  const places: Record<string, Spot> = {};
  for (const plate of plates) {
    const isMoving = plate.points.some((it) => moving.has(structureOf(system, it)?.id));
    const { left, top } = plate.box;
    places[plate.id] = isMoving
      ? { x: edits.onGrid(left + by.x, grid), y: edits.onGrid(top + by.y, grid) }
      : { x: left, y: top };
  }
  return edits.placeStructures(places);
}
