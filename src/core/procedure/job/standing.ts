import { MOST_REMEMBERED } from "../tolerances";
import { perObject, type StillhotDocument, type System } from "../../document";
import type { Json, JsonObject } from "../../terms";
import type { JobState } from "./state";

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

/** The drawing of a job once its things stand otherwise. Where an inject has changed more than those, it is a document of its own. */
export function documentAfter({ asFound, document }: JobState, system: System): StillhotDocument {
  const isTheJobs =
    document.job === asFound.job &&
    document.settings === asFound.settings &&
    document.scenario === asFound.scenario;
  return isTheJobs ? documentStanding(asFound, system) : { ...document, system };
}

function oneSystem(asFound: System, system: System): System {
  if (system.frequencyHz !== asFound.frequencyHz) return system;
  const name = nameOfStanding(asFound, system);
  if (name === "") return asFound;
  const known = systemsFrom(asFound);
  const found = known.get(name);
  if (found !== undefined) return found;
  if (known.size >= MOST_REMEMBERED) known.clear();
  known.set(name, system);
  return system;
}

/**
 * What differs from as found, in words that are the same for the same difference; empty where nothing does. Devices come and
 * go in any order; what comes onto the map as a point or a structure has its place among the others.
 */
const nameOfStanding = (asFound: System, system: System): string =>
  [
    ...differences("structure", asFound.structures ?? {}, system.structures ?? {}),
    ...differences("point", asFound.points, system.points),
    ...differences("element", asFound.elements, system.elements).sort(),
  ].join("\n");

type Records = Readonly<Record<string, JsonObject>>;

function differences(of: string, asFound: Records, records: Records): string[] {
  if (records === asFound) return [];
  const names: string[] = [];
  for (const [id, record] of Object.entries(records)) {
    const was = Object.hasOwn(asFound, id) ? asFound[id] : undefined;
    if (record === was) continue;
    const text = textOf(record);
    if (was === undefined || text !== textOf(was)) names.push(`${of} ${id}:${text}`);
  }
  for (const id of Object.keys(asFound)) if (!Object.hasOwn(records, id)) names.push(`${of} -${id}`);
  return names;
}

const textOf = perObject((record: JsonObject): string => JSON.stringify(sorted(record)));

const sorted = (record: JsonObject): (readonly [string, Json | undefined])[] =>
  Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1));
