import { deviceOf } from "../../devices";
import { isObject, type Json, type JsonObject, type Message, refuse, say } from "../../terms";
import { checkDocument } from "../check";
import { complete } from "../complete";
import type { StillhotDocument } from "../types";
import { change, type Command, type Draft, elementOf, nameOf, pointOf } from "./change";

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
    const gone = withThoseTheyCarry(before, new Set(points), new Set(elements));
    const job = cleanedJob(before, points, gone, workPoints);
    const count = points.length + gone.size + workPoints.length;
    const only = [...elements, ...points, ...workPoints][0] ?? "";
    const label =
      count === 1
        ? say("edit.removeOne", { name: nameOf(only, namedBy(before, only)) })
        : say("edit.removeThings", { count });
    return change(
      label,
      before,
      (draft) => {
        drop(draft, points, gone);
        if (job.record !== undefined) draft.job = job.record;
      },
      job.also.length === 0 ? {} : { also: job.also },
    );
  };

const namedBy = (before: StillhotDocument, id: string): JsonObject | undefined =>
  elementOf(before, id) ?? pointOf(before, id) ?? (workPointsOf(before)[id] as JsonObject | undefined);

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
  points: ReadonlySet<string>,
  elements: ReadonlySet<string>,
): Set<string> {
  const gone = new Set(elements);
  const saved = Object.entries(system.elements);
  for (const [id, record] of saved) {
    const element = complete(record) as unknown as Readonly<Record<string, string>>;
    if (deviceOf(record.kind).ends.some((end) => points.has(element[end]!))) gone.add(id);
  }
  for (const [id, record] of saved) {
    const element = complete(record);
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
function cleanedJob(
  before: StillhotDocument,
  points: readonly string[],
  elements: ReadonlySet<string>,
  workPoints: readonly string[],
): CleanedJob {
  if (before.job === undefined) return { also: [] };
  const system = {
    ...before.system,
    points: without(before.system.points, new Set(points)),
    elements: without(before.system.elements, elements),
  };
  const places = { ...workPointsOf(before) };
  let steps = (before.job["steps"] ?? []) as readonly Json[];
  const stepCount = steps.length;
  for (const id of workPoints) delete places[id];
  const also: Message[] = [];
  const file = () =>
    ({ ...before, system, job: { ...before.job, workPoints: places, steps } }) as unknown as JsonObject;
  for (;;) {
    const paths = checkDocument(file()).problems.map(({ path }) => path);
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
    steps.length === stepCount && Object.keys(places).length === Object.keys(workPointsOf(before)).length;
  if (isSame) return { also };
  return {
    record: {
      ...before.job,
      ...(before.job["workPoints"] === undefined ? {} : { workPoints: places }),
      ...(before.job["steps"] === undefined ? {} : { steps }),
    },
    also,
  };
}

const without = <Saved>(
  map: Readonly<Record<string, Saved>>,
  ids: ReadonlySet<string>,
): Record<string, Saved> => Object.fromEntries(Object.entries(map).filter(([id]) => !ids.has(id)));
