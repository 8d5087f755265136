import { isObject, type Json, type JsonObject, type Message, refuse, say } from "../../terms";
import { checkJob } from "../checkJob";
import { besideOthers } from "../besideOthers";
import { complete } from "../complete";
import { elementsAt, savedElement } from "../elementsAt";
import { nameIn } from "../names";
import { produced } from "../patching";
import { Report } from "../problem";
import type { StillhotDocument } from "../types";
import { checked, type Command, type Draft, elementOf, nameOf, pointOf } from "./change";

/** What is selected: ids, by what they name. */
export interface Things {
  readonly points?: readonly string[];
  readonly elements?: readonly string[];
  readonly workPoints?: readonly string[];
}

/**
 * Removes things. Points take their elements with them, spans the circuits drawn beside them; work points and steps
 * that name what is gone are removed too, and that is said. What hangs on a conductor that would be gone refuses.
 */
export const removeThings =
  ({ points = [], elements = [], workPoints = [] }: Things): Command =>
  (before) => {
    const missing =
      points.find((id) => pointOf(before, id) === undefined) ??
      elements.find((id) => elementOf(before, id) === undefined) ??
      workPoints.find((id) => !Object.hasOwn(workPointsOf(before), id));
    if (missing !== undefined) return refuse(say("edit.noThing", { id: missing }));
    const gone = withThoseTheyCarry(before, points, elements);
    const bare = produced<Draft>(before, (draft) => drop(draft, points, gone));
    const job = cleanedJob(bare.after, workPoints);
    const count = points.length + gone.size + workPoints.length;
    const only = [...elements, ...points, ...workPoints][0] ?? "";
    const label =
      count === 1
        ? say("edit.removeOne", { name: nameBefore(before, only) })
        : say("edit.removeThings", { count });
    const cleaned =
      job.record === undefined
        ? []
        : [produced<Draft>(bare.after, (draft) => void (draft.job = job.record!))];
    return checked(label, before, [bare, ...cleaned], job.also.length === 0 ? {} : { also: job.also });
  };

const nameBefore = (before: StillhotDocument, id: string): string | Message =>
  elementOf(before, id) === undefined && pointOf(before, id) === undefined
    ? nameOf(id, workPointsOf(before)[id] as JsonObject | undefined)
    : nameIn(before, id);

const workPointsOf = ({ job }: StillhotDocument): JsonObject => {
  const workPoints = job?.["workPoints"];
  return isObject(workPoints) ? workPoints : {};
};

function drop(draft: Draft, points: Iterable<string>, elements: Iterable<string>): void {
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
    if (element.kind === "nearby" && gone.has(element.span)) gone.add(id);
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
      also.push(say("edit.alsoWorkPoint", { name: nameOf(id, places[id] as JsonObject) }));
      delete places[id];
    }
    // A step may object to a work point that this round has just removed: steps are judged once places are settled.
    if (lost.size === 0) steps = steps.filter((_, index) => !wrong.has(index));
  }
  if (steps.length < stepCount) also.push(say("edit.alsoSteps", { count: stepCount - steps.length }));
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
