import { refuse, say } from "../../terms";
import { completePoint } from "../complete";
import type { SavedPoint, Spot } from "../types";
import { type Edit, pointOf, putRecords, withKeys } from "./change";

/** A place along one axis, snapped to the grid where there is one. */
export const onGrid = (value: number, grid: number): number =>
  grid > 0 ? Math.round(value / grid) * grid : value;

/**
 * Moves points together.
 *
 * @param by   how far, in the drawing's units
 * @param grid spacing that they are snapped to; 0 for none
 */
export const movePoints =
  (ids: readonly string[], by: Spot, grid = 0): Edit =>
  (before) => {
    const places: Record<string, Spot> = {};
    for (const id of ids) {
      const point = pointOf(before, id);
      if (point === undefined) return refuse(say("edit.noPoint", { id }));
      const { x, y } = completePoint(point);
      places[id] = { x: onGrid(x + by.x, grid), y: onGrid(y + by.y, grid) };
    }
    return placePoints(places)(before);
  };

/** Puts each point at its place, for a layout that was worked out elsewhere. */
export const placePoints =
  (places: Readonly<Record<string, Spot>>): Edit =>
  (before) => {
    const ids = Object.keys(places);
    const missing = ids.find((id) => pointOf(before, id) === undefined);
    if (missing !== undefined) return refuse(say("edit.noPoint", { id: missing }));
    const points: Record<string, SavedPoint> = {};
    for (const [id, { x, y }] of Object.entries(places)) {
      const point = pointOf(before, id)!;
      const was = completePoint(point);
      if (x !== was.x || y !== was.y) points[id] = withKeys(point, { x, y });
    }
    return putRecords(say("edit.movePoints", { count: ids.length }), before, { points });
  };
