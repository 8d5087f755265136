import type { JsonObject } from "../../terms";
import { asHeard, labelIn } from "../names";
import type { Records } from "../patching";
import { type Structure, structuresOf } from "../structures";
import type { SavedPoint, SavedStructure, StillhotDocument } from "../types";
import { isId, nextId, pointOf, withKeys } from "./change";
import { kindKey } from "../structureKinds";

/** A derived structure as one of the file, with its points on it. */
export interface Adopted extends Required<Pick<Records, "structures" | "points">> {
  readonly id: string;
}

/**
 * What has to stand in the file so that it names a structure that was derived. What all its points are called by, before
 * a comma, is its label, and what follows is their place: *Pole 30, cutout top* is the cutout top of pole 30. How each
 * point is known stays as each says.
 *
 * @param taken ids that others are about to have
 */
export function adopted(
  document: StillhotDocument,
  { id: derived, label, kind, points: own }: Structure,
  taken: ReadonlySet<string> = new Set(),
): Adopted {
  const id = nextId("s", (it) => taken.has(it) || isId(document, it));
  const stem = stemOf(document, derived, label);
  const structure: SavedStructure = {
    ...(stem === "" ? {} : { label: stem }),
    ...kindKey(kind),
  };
  const points = Object.fromEntries(
    own.map((it): [string, SavedPoint] => [
      it,
      withKeys(pointOf(document, it)!, { label: placeIn(stem, labelIn(document.system, it)), on: id }),
    ]),
  );
  return { id, structures: { [id]: structure }, points };
}

/** A structure as one of the file: as it stands there, or adopted with some keys of its own. */
export function inTheFile(
  document: StillhotDocument,
  structure: Structure,
  keys: JsonObject,
  taken?: ReadonlySet<string>,
): Adopted {
  const { id, isDerived } = structure;
  if (!isDerived)
    return {
      id,
      structures: { [id]: withKeys(document.system.structures![id]!, keys) },
      points: {},
    };
  const own = adopted(document, structure, taken);
  return { ...own, structures: { [own.id]: withKeys(own.structures[own.id]!, keys) } };
}

/** What stands before the comma, unless another structure is called so. */
function stemOf({ system }: StillhotDocument, derived: string, label: string): string {
  const [stem = ""] = label.split(",");
  const isOthers = [...structuresOf(system).values()].some(
    (it) => it.id !== derived && asHeard(it.label.split(",")[0]!) === asHeard(stem),
  );
  return isOthers ? label : stem.trim();
}

/** A point's place where its structure is known; nothing where its label says no more than that. */
function placeIn(stem: string, label: string): string | undefined {
  const rest = label.startsWith(`${stem},`) && stem !== "" ? label.slice(stem.length + 1).trim() : label;
  return rest === "" || asHeard(rest) === asHeard(stem) ? undefined : rest;
}
