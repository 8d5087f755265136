import { complete, isStation, type Step, structureOf, type System } from "../../document";
import { endsOf } from "../../network";
import type { ElementId, Message, PointId } from "../../terms";
import type { PlannedStep } from "./types";

/** A step with what it is for. */
export const step = (it: Step, why: Message): PlannedStep => ({ ...it, why });

/** Where hands go to a thing: an end of it that is on its structure, a house's meter at the house. */
export function placeOf(system: System, id: ElementId): PointId {
  const ends = endsOf(complete(system.elements[id]!)).map(([, point]) => point);
  const structure = structureOf(system, id);
  return ends.find((it) => structureOf(system, it) === structure) ?? ends[0]!;
}

/** Whether people stand at a pole there, and not at a pad, in a vault or a station. */
export const isOnPole = (system: System, at: PointId): boolean =>
  (structureOf(system, at)?.kind ?? "pole") === "pole";

/** Whether people stand on a station's own ground grid there. */
export function isInStation(system: System, at: PointId): boolean {
  const structure = structureOf(system, at);
  return structure !== undefined && isStation(structure);
}

/** Ranks of actions: what comes before what, wherever what they wait for leaves it open. */
export const RANK = {
  guard: 0,
  brief: 1,
  /** whatever else is done at a place, people are kept clear of it first */
  barricade: 2,
  secure: 3,
  request: 4,
  receive: 5,
  bypass: 8,
  ring: 9,
  isolate: 10,
  supply: 15,
  wait: 20,
  ground: 30,
  retest: 35,
  cover: 41,
  work: 50,
  allClear: 60,
  uncover: 65,
  unground: 70,
  allClearAgain: 80,
  release: 82,
  untag: 90,
  restore: 100,
} as const;
