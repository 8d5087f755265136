import { savedPoint } from "./elementsAt";
import { type TouchedRecords, perDrawing } from "./touched";
import type { System } from "./types";

/** Whether persons placed the points of a drawing one by one: else the program lays it out, structure by structure. */
export const hasPlacedPoints: (system: System) => boolean = perDrawing<boolean>(
  ({ points }) => {
    for (const id in points) if (isPlacedPoint(points, id)) return true;
    return false;
  },
  (was, _before, { points }, touched: TouchedRecords) =>
    was && touched.points.size > 0
      ? undefined
      : was || [...touched.points].some((id) => isPlacedPoint(points, id)),
);

/** Whether a person placed a structure: the others then stand where the program puts them. */
export const hasPlacedStructures = ({ structures = {} }: System): boolean =>
  Object.values(structures).some((it) => it["x"] !== undefined || it["y"] !== undefined);

function isPlacedPoint(points: System["points"], id: string): boolean {
  const saved = savedPoint(points, id);
  return saved !== undefined && (saved["x"] !== undefined || saved["y"] !== undefined);
}
