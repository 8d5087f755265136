import { MOST_REMEMBERED } from "../tolerances";
import { perObject, type SavedElement, type StillhotDocument, type System } from "../../document";
import type { ElementId, Json } from "../../terms";

const systemsFrom = perObject((_asFound: System) => new Map<string, System>());
const documentsFrom = perObject((_asFound: StillhotDocument) => new Map<System, StillhotDocument>());

/**
 * The one document for a way in which the things of a job can stand: the same object whenever they stand so again, in
 * another order of steps, after an undo, in another version of the plan. What is known of it is then known already.
 */
export function documentStanding(asFound: StillhotDocument, system: System): StillhotDocument {
  const one = oneSystem(asFound.system, system);
  if (one === asFound.system) return asFound;
  const known = documentsFrom(asFound);
  const found = known.get(one);
  if (found !== undefined) return found;
  if (known.size >= MOST_REMEMBERED) known.clear();
  const fresh = { ...asFound, system: one };
  known.set(one, fresh);
  return fresh;
}

function oneSystem(asFound: System, system: System): System {
  // What an instructor's inject changes beside the elements has no short name: it is left as it is.
  if (system.points !== asFound.points || system.frequencyHz !== asFound.frequencyHz) return system;
  const name = nameOfStanding(asFound, system);
  if (name === "") return asFound;
  const known = systemsFrom(asFound);
  const found = known.get(name);
  if (found !== undefined) return found;
  if (known.size >= MOST_REMEMBERED) known.clear();
  known.set(name, system);
  return system;
}

/** What differs from as found, in words that are the same for the same difference; empty where nothing does. */
function nameOfStanding(asFound: System, system: System): string {
  const names: string[] = [];
  for (const id of Object.keys(system.elements) as ElementId[]) {
    const record = system.elements[id]!;
    const was = Object.hasOwn(asFound.elements, id) ? asFound.elements[id] : undefined;
    if (record === was) continue;
    const text = textOf(record);
    if (was === undefined || text !== textOf(was)) names.push(`${id}:${text}`);
  }
  for (const id of Object.keys(asFound.elements))
    if (!Object.hasOwn(system.elements, id)) names.push(`-${id}`);
  return names.sort().join("\n");
}

const textOf = perObject((record: SavedElement): string => JSON.stringify(sorted(record)));

const sorted = (record: SavedElement): (readonly [string, Json | undefined])[] =>
  Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1));
