import { isBeside } from "../../devices";
import {
  isObject,
  type Json,
  type JsonObject,
  type Message,
  refuse,
  say,
  type StructureId,
} from "../../terms";
import { checkJob } from "../checkJob";
import { besideOthers } from "../besideOthers";
import { complete } from "../complete";
import { elementsAt, savedElement } from "../elementsAt";
import { listOf, nameIn, structureName } from "../names";
import { produced } from "../patching";
import { Report } from "../problem";
import { type Structure, structureOf, structuresAround, structuresOf } from "../structures";
import type { StillhotDocument } from "../types";
import { checked, type Edit, type Draft, elementOf, nameOf, pointOf } from "./change";
import { isHouse } from "../structureKinds";

/** What is selected: ids, by what they name. */
export interface Things {
  readonly structures?: readonly string[];
  readonly points?: readonly string[];
  readonly elements?: readonly string[];
  readonly workPoints?: readonly string[];
}

/**
 * Removes things. A structure takes its points and what is on it, and that is said; one of the file that loses its last
 * point goes too. Points take their elements with them, spans the circuits drawn beside them; work points and steps
 * that name what is gone are removed too, and that is said. What hangs on a conductor that would be gone refuses.
 */
export const removeThings =
  ({ structures = [], points: some = [], elements: others = [], workPoints = [] }: Things): Edit =>
  (before) => {
    const asked = structures.map((id) => structuresOf(before.system).get(id as StructureId));
    const whole = withHousesLeft(
      before,
      asked.filter((it) => it !== undefined),
    );
    const points = [...new Set([...some, ...whole.flatMap((it) => it.points)])];
    const elements = [...new Set([...others, ...whole.flatMap((it) => it.elements)])];
    const missing =
      structures.find((_, nth) => asked[nth] === undefined) ??
      points.find((id) => pointOf(before, id) === undefined) ??
      elements.find((id) => elementOf(before, id) === undefined) ??
      workPoints.find((id) => !Object.hasOwn(workPointsOf(before), id));
    if (missing !== undefined) return refuse(say("edit.noThing", { id: missing }));
    const gone = withThoseTheyCarry(before, points, elements);
    const empty = emptied(
      before,
      points,
      whole.map(({ id }) => id),
    );
    const bare = produced<Draft>(before, (draft) => drop(draft, points, gone, empty));
    const job = cleanedJob(bare.after, workPoints);
    const count = points.length + gone.size + workPoints.length;
    const isOne = structures.length === 1 && some.length + others.length + workPoints.length === 0;
    const only = [...elements, ...points, ...workPoints][0] ?? "";
    const label = isOne
      ? say("edit.removeOne", { name: structureName(before, structures[0]!) })
      : count === 1
        ? say("edit.removeOne", { name: nameBefore(before, only) })
        : say("edit.removeThings", { count });
    const also = [
      ...asked.flatMap((it) =>
        goingWith(
          before,
          it!,
          gone,
          whole.filter((house) => !asked.includes(house)),
        ),
      ),
      ...job.also,
    ];
    const cleaned =
      job.record === undefined
        ? []
        : [produced<Draft>(bare.after, (draft) => void (draft.job = job.record!))];
    return checked(label, before, [bare, ...cleaned], also.length === 0 ? {} : { also });
  };

const nameBefore = (before: StillhotDocument, id: string): string | Message =>
  elementOf(before, id) === undefined && pointOf(before, id) === undefined
    ? nameOf(id, workPointsOf(before)[id] as JsonObject | undefined)
    : nameIn(before, id);

const workPointsOf = ({ job }: StillhotDocument): JsonObject => {
  const workPoints = job?.["workPoints"];
  return isObject(workPoints) ? workPoints : {};
};

/** With structures the houses that only they feed: their customers would hang on nothing. */
function withHousesLeft({ system }: StillhotDocument, going: readonly Structure[]): Structure[] {
  const all = new Set(going);
  for (const structure of all)
    for (const house of structuresAround(system, structure))
      if (isHouse(house) && structuresAround(system, house).every((it) => all.has(it))) all.add(house);
  return [...all];
}

/** What goes with a structure, in a sentence: houses, what is on it, and every line to it; nothing where it stands bare. */
function goingWith(
  before: StillhotDocument,
  structure: Structure,
  gone: ReadonlySet<string>,
  houses: readonly Structure[],
): Message[] {
  const { id, points } = structure;
  const its = new Set(points.flatMap((it) => elementsAt(before.system).get(it) ?? []));
  const around = structuresAround(before.system, structure);
  const going = [
    ...houses.filter((it) => around.includes(it)).map((it) => structureName(before, it.id)),
    ...[...gone].filter((it) => its.has(it)).map((it) => nameIn(before, it)),
  ];
  if (going.length === 0) return [];
  const things = going.slice(0, MOST_NAMED);
  const more = going.length - things.length;
  return [
    say("removed.onIt", {
      name: structureName(before, id),
      things: listOf(more === 0 ? things : [...things, say("name.more", { count: more })]),
    }),
  ];
}

/** So many things are told by name; of more nobody reads the list. */
const MOST_NAMED = 5;

/** Structures of the file that are left without a point, or go whole. */
function emptied(
  { system }: StillhotDocument,
  points: readonly string[],
  whole: readonly string[],
): readonly string[] {
  const going = new Set(points);
  const left = new Set(points.map((it) => structureOf(system, it)?.id).filter((it) => it !== undefined));
  for (const id of whole) left.add(id as StructureId);
  return [...left].filter((id) => {
    const structure = structuresOf(system).get(id)!;
    return !structure.isDerived && structure.points.every((it) => going.has(it));
  });
}

function drop(
  draft: Draft,
  points: Iterable<string>,
  elements: Iterable<string>,
  structures: readonly string[],
): void {
  for (const id of structures) delete draft.system.structures![id];
  if (structures.length > 0 && Object.keys(draft.system.structures!).length === 0)
    delete draft.system.structures;
  for (const id of elements) delete draft.system.elements[id];
  for (const id of points) delete draft.system.points[id];
}

function withThoseTheyCarry(
  { system }: StillhotDocument,
  points: readonly string[],
  elements: readonly string[],
): Set<string> {
  const gone = new Set(elements);
  for (const point of points) for (const id of elementsAt(system).get(point) ?? []) gone.add(id);
  for (const id of besideOthers(system)) {
    const element = complete(savedElement(system.elements, id)!);
    if (isBeside(element) && gone.has(element.span)) gone.add(id);
  }
  return gone;
}

interface CleanedJob {
  /** absent where nothing of the job changes */
  readonly record?: JsonObject;
  readonly also: readonly Message[];
}

/** The job without what names things that are gone: the reader's own objections say which those are. */
function cleanedJob(bare: StillhotDocument, workPoints: readonly string[]): CleanedJob {
  if (bare.job === undefined) return { also: [] };
  const isThere = (id: string) => savedElement(bare.system.elements, id) !== undefined;
  const places = withoutWorkOn(workPointsOf(bare), isThere);
  const leave = withoutLeft(bare.job["leave"], isThere);
  let steps = (bare.job["steps"] ?? []) as readonly Json[];
  const stepCount = steps.length;
  for (const id of workPoints) delete places[id];
  const also: Message[] = [];
  for (;;) {
    const report = new Report();
    checkJob(report, { ...bare.job, ...leave, workPoints: places, steps }, bare.system);
    const paths = report.problems.map(({ path }) => path);
    const lost = new Set(paths.flatMap((path) => /^job\.workPoints\.([\w-]+)/.exec(path)?.[1] ?? []));
    const wrong = new Set(paths.flatMap((path) => /^job\.steps\[(\d+)\]/.exec(path)?.[1] ?? []).map(Number));
    if (lost.size === 0 && wrong.size === 0) break;
    for (const id of lost) {
      also.push(say("removed.workPoint", { name: nameOf(id, places[id] as JsonObject) }));
      delete places[id];
    }
    // A step may object to a work point that this round has just removed: steps are judged once places are settled.
    if (lost.size === 0) steps = steps.filter((_, index) => !wrong.has(index));
  }
  if (steps.length < stepCount) also.push(say("removed.steps", { count: stepCount - steps.length }));
  const isSame =
    steps.length === stepCount &&
    leave["leave"] === bare.job["leave"] &&
    Object.keys(workPointsOf(bare)).every((id) => places[id] === workPointsOf(bare)[id]);
  if (isSame) return { also };
  return {
    record: {
      ...bare.job,
      ...leave,
      ...(bare.job["workPoints"] === undefined ? {} : { workPoints: places }),
      ...(bare.job["steps"] === undefined ? {} : { steps }),
    },
    also,
  };
}

/** Work points whose work no longer names what is gone; the same records where nothing of theirs is. */
const withoutWorkOn = (
  places: JsonObject,
  isThere: (id: string) => boolean,
): Record<string, Json | undefined> =>
  Object.fromEntries(
    Object.entries(places).map(([id, place]) => {
      const does = isObject(place) ? place["does"] : undefined;
      if (!Array.isArray(does) || does.every((it) => isThere(String(it)))) return [id, place];
      const { does: _does, ...others } = place as JsonObject;
      const still = does.filter((it) => isThere(String(it)));
      return [id, still.length === 0 ? others : { ...others, does: still }];
    }),
  );

/** How things are to be left, without what is gone. */
function withoutLeft(leave: Json | undefined, isThere: (id: string) => boolean): JsonObject {
  if (!isObject(leave)) return {};
  const still = Object.entries(leave).filter(([id]) => isThere(id));
  return { leave: still.length === Object.keys(leave).length ? leave : Object.fromEntries(still) };
}
