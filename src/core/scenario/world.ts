import { type CircuitElement, deviceOf } from "../devices";
import {
  pointsOnStructure,
  type Amendment,
  amended,
  complete,
  type HiddenFact,
  idsOf,
  type Inject,
  objectionTo,
  type Reveal,
  type SavedElement,
  type SavedPoint,
  type SavedStructure,
  scenarioOf,
  type Step,
  type StillhotDocument,
  structureOf,
  type System,
} from "../document";
import { endsOf } from "../network";
import { beginJob, type JobState } from "../procedure";
import { documentAfter, documentStanding } from "../procedure/job/standing";
import type { ElementId, JsonObject, PointId, StructureId } from "../terms";
import { factsOf, mapOf, truthOf } from "./truth";

/** A structure, or a point on one, which stands for it. */
export type StructureOrPointId = PointId | StructureId;

/** How an attempt stands: what is true, what is known, where the apprentice is. Never changed: an action makes a new one. */
export interface World {
  readonly truth: JobState;
  readonly known: JobState;
  /** where the apprentice stands, the structure or a point on it; nothing while still at the truck */
  readonly at: StructureOrPointId | undefined;
  /** points looked at from close by */
  readonly seen: ReadonlySet<string>;
  /** hidden facts and injects that are known, each with the entry of the log that brought it to light */
  readonly facts: ReadonlyMap<string, number>;
  /** facts that are known and whose drawing cannot be amended before others are known too */
  readonly pending: readonly string[];
  /** injects that have happened, each with its entry */
  readonly happened: ReadonlyMap<string, number>;
  /** things that somebody has tried to operate */
  readonly tried: ReadonlySet<string>;
  /** steps of the job so far, those that could not be done among them */
  readonly steps: number;
  /** seconds since the beginning */
  readonly t: number;
  readonly over: "" | "finished" | "abandoned" | "failed";
}

/** The world of a scenario before anything is done: the truth, what is known of it, and nobody anywhere yet. */
export const beginWorld = (document: StillhotDocument): World => ({
  truth: beginJob(truthOf(document)),
  known: beginJob(mapOf(document)),
  at: undefined,
  seen: new Set(),
  facts: new Map(),
  pending: [],
  happened: new Map(),
  tried: new Set(),
  steps: 0,
  t: 0,
  over: "",
});

const recordOf = <Saved>(map: Readonly<Record<string, Saved>>, id: string): Saved | undefined =>
  Object.hasOwn(map, id) ? map[id] : undefined;

/** An element by its id, its defaults filled in; nothing where there is none. */
export const elementIn = (system: System, id: string | undefined): CircuitElement | undefined => {
  const saved = id === undefined ? undefined : recordOf<SavedElement>(system.elements, id);
  return saved === undefined ? undefined : complete(saved);
};

/** Points that a thing touches: an element's ends, those on a structure, or the point itself. */
export function placesOf(system: System, id: string): readonly PointId[] {
  const element = elementIn(system, id);
  if (element !== undefined) return endsOf(element).map(([, point]) => point);
  return Object.hasOwn(system.points, id) ? [id as PointId] : withinReach(system, id);
}

/** The structure that an id names, or on which a point stands: every point within reach of somebody on that pole. */
export const withinReach = (system: System, place: string): readonly PointId[] =>
  Object.hasOwn(system.elements, place) ? [] : pointsOnStructure(system, place);

const isFact = (it: HiddenFact | Inject): it is HiddenFact => !("after" in it);

/** Devices of a fact that do not move, or only seem to. */
const stuckOf = (it: HiddenFact | Inject): string[] =>
  isFact(it) ? [...Object.keys(it.seized ?? {}), ...Object.keys(it.fused ?? {})] : [];

/** Ways by which the scenario itself says that a fact comes to light. */
export const revealsOf = (document: StillhotDocument, id: string): readonly Reveal[] =>
  (scenarioOf(document).reveals ?? []).filter(({ shows }) => shows?.includes(id));

/** Points at which a look shows a fact for which the scenario names no way of its own. */
export function placesOfFact(document: StillhotDocument, id: string): PointId[] {
  const fact = factsOf(document).get(id);
  if (fact === undefined || revealsOf(document, id).length > 0) return [];
  const { system } = truthOf(document);
  const about = idsOf(fact as Amendment).flatMap((it) => [
    ...placesOf(system, it),
    ...placesOf(document.system, it),
    ...placesOf(amended(system, [fact]), it),
  ]);
  const fused = isFact(fact) ? Object.keys(fact.fused ?? {}).flatMap((it) => placesOf(system, it)) : [];
  return [...new Set([...about, ...fused])];
}

/** Phases of a device that do not move, or whose contacts stay closed though the handle moves. */
export function stuckPhases(
  document: StillhotDocument,
  how: "seized" | "fused",
  id: string | undefined,
): string {
  const element = elementIn(truthOf(document).system, id);
  if (element === undefined) return "";
  const { phases } = element as { phases: string };
  const named = Object.values(scenarioOf(document).truth ?? {}).map((it) => it[how]?.[id!]);
  return [...phases].filter((it) => named.some((them) => them === true || them?.includes(it))).join("");
}

/** Reveals that an action sets off where it is done. */
export function revealsBy(document: StillhotDocument, world: World, step: Step): readonly Reveal[] {
  const { system } = world.truth.document;
  const reach = (point: string | undefined) => (point === undefined ? [] : withinReach(system, point));
  return (scenarioOf(document).reveals ?? []).filter(({ by, at, element }) => {
    if (by !== step.do) return false;
    if (by === "ask")
      return (
        (at === undefined && element === undefined) ||
        (at !== undefined && at === step.at) ||
        (element !== undefined && element === step.element)
      );
    const places = placesOf(system, at ?? element!);
    return by === "test"
      ? places.includes(step.at as PointId)
      : reach(step.at).some((it) => places.includes(it));
  });
}

/** Facts that come to light by a step, in the order of the file. */
export function factsShownBy(document: StillhotDocument, world: World, step: Step, done: boolean): string[] {
  const shown = revealsBy(document, world, step).flatMap(({ shows }) => shows ?? []);
  const { system } = world.truth.document;
  const hands = step.element === undefined || step.do === "ask" ? [] : placesOf(system, step.element);
  for (const [id, fact] of factsOf(document)) {
    if (shown.includes(id) || world.facts.has(id) || !isTrueBy(world, id, fact)) continue;
    const stuck = stuckOf(fact);
    if (isFact(fact) && !done && step.element !== undefined && fact.seized?.[step.element] !== undefined)
      shown.push(id);
    if (revealsOf(document, id).length > 0) continue;
    const isFused = isFact(fact) && fact.fused !== undefined;
    const isStuckOnly = stuck.length > 0 && idsOf(fact).length === 0;
    if (isStuckOnly && !(isFused && stuck.some((it) => world.tried.has(it)))) continue;
    const places = placesOfFact(document, id);
    // Whoever looks at a pole sees what is on it; whoever has a stick on a thing sees that thing.
    const looks = step.do === "inspect" && withinReach(system, step.at!).some((it) => places.includes(it));
    const holds = hands.length > 0 && idsOf(fact).includes(step.element!);
    if (looks || holds) shown.push(id);
  }
  return shown.filter((id) => !world.facts.has(id) && isTrueBy(world, id, factsOf(document).get(id)));
}

/** An inject is no fact before it has happened. */
const isTrueBy = (world: World, id: string, fact: HiddenFact | Inject | undefined): boolean =>
  fact !== undefined && (isFact(fact) || world.happened.has(id));

/** A job in which the drawing is another one; what was found at the beginning was otherwise, too. */
function withSystems(
  job: JobState,
  change: (system: System) => System,
  changeAsFound: (system: System) => System = change,
): JobState {
  const asFound = documentStanding(job.asFound, changeAsFound(job.asFound.system));
  const now = documentAfter({ ...job, asFound }, change(job.document.system));
  return { ...job, document: now, asFound };
}

/** The truth after something has happened that nobody of the crew did. */
export const truthAfter = (truth: JobState, change: Amendment): JobState =>
  idsOf(change).length === 0 ? truth : withSystems(truth, (system) => amended(system, [change]));

/** What is known once some facts have come to light: the map is amended, or waits until it would be readable. */
export function knowing(
  document: StillhotDocument,
  world: World,
  ids: readonly string[],
  entry: number,
  by: "seen" | "told",
): World {
  if (ids.length === 0) return world;
  const facts = new Map(world.facts);
  for (const id of ids) if (!facts.has(id)) facts.set(id, entry);
  const waiting = [...new Set([...world.pending, ...ids])];
  let known = world.known;
  const left: string[] = [];
  for (const id of waiting) known = tryAmend(document, world, known, [id], by, () => left.push(id));
  if (left.length > 1) {
    const together = tryAmend(document, world, known, left, by, () => undefined);
    if (together !== known) return { ...world, facts, known: together, pending: [] };
  }
  return { ...world, facts, known, pending: left };
}

function tryAmend(
  document: StillhotDocument,
  world: World,
  known: JobState,
  ids: readonly string[],
  by: "seen" | "told",
  otherwise: () => void,
): JobState {
  const { truth } = world;
  const changesFrom = (system: System) => ids.map((id) => asItStands(document, system, id, by));
  const next = withSystems(
    known,
    (system) => amended(system, changesFrom(truth.document.system)),
    (system) => amended(system, changesFrom(truth.asFound.system)),
  );
  if (objectionTo(next.document) === undefined && objectionTo(next.asFound) === undefined) return next;
  otherwise();
  return known;
}

/** A fact as a change to the map: not what it was at the beginning, but what stands there now. */
function asItStands(
  document: StillhotDocument,
  { structures = {}, points, elements }: System,
  id: string,
  evidence: "seen" | "told",
): Amendment {
  const fact = factsOf(document).get(id)!;
  const now = <Saved extends JsonObject>(
    map: Readonly<Record<string, Saved>>,
    old: Readonly<Record<string, Saved>>,
  ) =>
    Object.fromEntries(
      Object.keys(old).flatMap((it) => {
        const saved = recordOf(map, it);
        return saved === undefined ? [] : [[it, { ...saved, evidence }] as const];
      }),
    );
  const set: Record<string, JsonObject> = {};
  for (const [it, keys] of Object.entries(fact.set ?? {})) {
    const saved: JsonObject | undefined =
      recordOf<SavedElement>(elements, it) ??
      recordOf<SavedPoint>(points, it) ??
      recordOf<SavedStructure>(structures, it);
    if (saved === undefined) continue;
    set[it] = { ...Object.fromEntries(Object.keys(keys).map((key) => [key, saved[key] ?? null])), evidence };
  }
  for (const it of isFact(fact) ? Object.keys(fact.fused ?? {}) : []) {
    const saved = recordOf<SavedElement>(elements, it);
    if (saved === undefined) continue;
    set[it] = { ...set[it], open: saved["open"] ?? null, evidence };
    if ("gang" in deviceOf(saved.kind).fields) set[it] = { ...set[it], gang: saved["gang"] ?? null };
  }
  return {
    add: {
      structures: now<SavedStructure>(structures, fact.add?.structures ?? {}),
      points: now<SavedPoint>(points, fact.add?.points ?? {}),
      elements: now<SavedElement>(elements, fact.add?.elements ?? {}),
    },
    set,
    remove: fact.remove ?? [],
  };
}

/** What somebody on a pole has before their eyes is no longer only on the map. */
export function looking(world: World, point: string): World {
  const { system } = world.truth.document;
  const reach = withinReach(system, point);
  const known = world.known.document.system;
  const structure = structureOf(known, point)?.id;
  const ids = [
    ...(structure !== undefined && Object.hasOwn(known.structures ?? {}, structure) ? [structure] : []),
    ...reach.filter((it) => Object.hasOwn(known.points, it)),
    ...(Object.keys(known.elements) as ElementId[]).filter(
      (it) =>
        Object.hasOwn(system.elements, it) && placesOf(known, it).some((place) => reach.includes(place)),
    ),
  ];
  const set = Object.fromEntries(ids.map((it) => [it, { evidence: "seen" }]));
  return {
    ...world,
    known: withSystems(world.known, (before) => amended(before, [{ set }])),
    seen: new Set([...world.seen, ...reach]),
  };
}
