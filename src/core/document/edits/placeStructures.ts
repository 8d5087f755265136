import { type JsonObject, refuse, say } from "../../terms";
import { hasPlacedPoints } from "../placed";
import { structuresOf } from "../structures";
import type { SavedPoint, SavedStructure } from "../types";
import { type Command, nextId, pointOf, putRecords, together, withKeys } from "./change";
import type { Place } from "./movePoints";

/**
 * Puts structures where a person wants them; those that the file does not name yet come to stand in it.
 *
 * @param places by the ids of structures, derived ones by that of their first point
 */
export const placeStructures =
  (places: Readonly<Record<string, Place>>): Command =>
  (before) => {
    const structures: Record<string, SavedStructure> = {};
    const points: Record<string, SavedPoint> = {};
    for (const { id, isDerived, label, kind, evidence, points: own } of structuresOf(
      before.system,
    ).values()) {
      const place = places[id];
      if (place === undefined) continue;
      if (!isDerived) {
        structures[id] = withKeys(before.system.structures![id]!, { x: place.x, y: place.y });
        continue;
      }
      const name = nextId("s", (it) => isTaken(it) || Object.hasOwn(structures, it));
      structures[name] = { label, kind, evidence, x: place.x, y: place.y };
      for (const point of own) points[point] = withKeys(pointOf(before, point)!, { on: name });
    }
    return putRecords(say("edit.movePoints", { count: Object.keys(places).length }), before, {
      structures,
      points,
    });

    function isTaken(id: string): boolean {
      const { system } = before;
      return [system.points, system.elements, system.structures ?? {}].some((it) => Object.hasOwn(it, id));
    }
  };

/**
 * An edit that leaves the places of what it adds to the program, in a drawing that the program lays out. Where it places
 * what is there already it is left as it is.
 */
export const leftToProgram =
  (command: Command): Command =>
  (before) => {
    const done = command(before);
    if ("refused" in done || hasPlacedPoints(before.system)) return done;
    const added = Object.entries(done.after.system.points).flatMap(([id, saved]): [string, JsonObject][] =>
      Object.hasOwn(before.system.points, id) || (saved["x"] === undefined && saved["y"] === undefined)
        ? []
        : [[id, withKeys(saved, { x: undefined, y: undefined })]],
    );
    if (added.length === 0) return done;
    const unplaced: Command = (after) => putRecords(done.label, after, { points: Object.fromEntries(added) });
    const both = together(done.label, [() => done, unplaced])(before);
    return "refused" in both
      ? both
      : { ...done, after: both.after, forward: both.forward, inverse: both.inverse };
  };

/** Leaves every place to the program again. */
export const unplaceAll: Command = (before) => {
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
