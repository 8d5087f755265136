import { type JsonObject, refuse, say } from "../../terms";
import { hasPlacedPoints } from "../placed";
import { structuresOf } from "../structures";
import type { SavedPoint, SavedStructure } from "../types";
import { inTheFile } from "./adopt";
import { type Edit, putRecords, together, withKeys } from "./change";
import type { Spot } from "../types";

/**
 * Puts structures where a person wants them; those that the file does not name yet come to stand in it.
 *
 * @param places by the ids of structures, derived ones by that of their first point
 */
export const placeStructures =
  (places: Readonly<Record<string, Spot>>): Edit =>
  (before) => {
    const structures: Record<string, SavedStructure> = {};
    const points: Record<string, SavedPoint> = {};
    for (const structure of structuresOf(before.system).values()) {
      const place = places[structure.id];
      if (place === undefined) continue;
      const own = inTheFile(before, structure, { x: place.x, y: place.y }, new Set(Object.keys(structures)));
      Object.assign(structures, own.structures);
      Object.assign(points, own.points);
    }
    return putRecords(say("edit.movePoints", { count: Object.keys(places).length }), before, {
      structures,
      points,
    });
  };

/**
 * An edit that leaves the places of what it adds to the program, in a drawing that the program lays out. Where it places
 * what is there already it is left as it is.
 */
export const leftToProgram =
  (edit: Edit): Edit =>
  (before) => {
    const done = edit(before);
    if ("refused" in done || hasPlacedPoints(before.system)) return done;
    const added = Object.entries(done.after.system.points).flatMap(([id, saved]): [string, JsonObject][] =>
      Object.hasOwn(before.system.points, id) || (saved["x"] === undefined && saved["y"] === undefined)
        ? []
        : [[id, withKeys(saved, { x: undefined, y: undefined })]],
    );
    if (added.length === 0) return done;
    const unplaced: Edit = (after) => putRecords(done.label, after, { points: Object.fromEntries(added) });
    const both = together(done.label, [() => done, unplaced])(before);
    return "refused" in both
      ? both
      : { ...done, after: both.after, forward: both.forward, inverse: both.inverse };
  };

/** Leaves every place to the program again. */
export const unplaceAll: Edit = (before) => {
  const bare = <Saved extends JsonObject>(records: Readonly<Record<string, Saved>>): Record<string, Saved> =>
    Object.fromEntries(
      Object.entries(records)
        .filter(([, it]) => it["x"] !== undefined || it["y"] !== undefined)
        .map(([id, it]) => [id, withKeys(it, { x: undefined, y: undefined })]),
    );
  const [points, structures] = [bare(before.system.points), bare(before.system.structures ?? {})];
  if (Object.keys({ ...points, ...structures }).length === 0) return refuse(say("edit.isTidy"));
  return putRecords(say("edit.tidy"), before, { points, structures });
};
