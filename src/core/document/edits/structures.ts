import { type JsonObject, refuse, say } from "../../terms";
import { structureName } from "../names";
import { type Structure, structuresOf } from "../structures";
import { type SavedElement, type SavedPoint, type StillhotDocument, structureFields } from "../types";
import { inTheFile } from "./adopt";
import { unlessCalledAlike } from "./calledAlike";
import { type Edit, elementOf, pointOf, putRecords, withKeys } from "./change";
import { refuseUnknown } from "./setKeys";

/** Sets keys of a structure, which from then on is one of the file; `undefined` takes a key away. */
export const setStructureKeys =
  (id: string, keys: JsonObject): Edit =>
  (before) => {
    const structure = structureIn(before, id);
    if (structure === undefined) return refuse(say("edit.noThing", { id }));
    const own = inTheFile(before, structure, keys);
    const label = say("edit.setKeys", { name: structureName(before, id) });
    return (
      refuseUnknown(structureFields, keys) ??
      unlessCalledAlike(before, own.id, keys, putRecords(label, before, own, { made: [own.id] }))
    );
  };

/**
 * Somebody stands at a structure and sees it with all that is on it: what its points and devices said of how they are
 * known gives way to that.
 *
 * @param day `2026-03-31`
 */
export const seeStructure =
  (id: string, day: string): Edit =>
  (before) => {
    const structure = structureIn(before, id);
    if (structure === undefined) return refuse(say("edit.noThing", { id }));
    const own = inTheFile(before, structure, { evidence: "seen", seenOn: day });
    const bare = <Saved extends JsonObject>(record: Saved): Saved =>
      withKeys(record, { evidence: undefined });
    const points = structure.points.map((it): [string, SavedPoint] => [
      it,
      bare(own.points[it] ?? pointOf(before, it)!),
    ]);
    const elements = structure.elements.map((it): [string, SavedElement] => [
      it,
      bare(elementOf(before, it)!),
    ]);
    return putRecords(
      say("edit.seeStructure", { name: structureName(before, id) }),
      before,
      {
        structures: own.structures,
        points: Object.fromEntries(points),
        elements: Object.fromEntries(elements),
      },
      { made: [own.id] },
    );
  };

const structureIn = ({ system }: StillhotDocument, id: string): Structure | undefined =>
  structuresOf(system).get(id as Structure["id"]);
