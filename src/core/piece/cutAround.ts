import { customersOf, deviceOf, isBeside, isSupply, shortedBy } from "../devices";
import {
  complete,
  doneBy,
  endPointsOf,
  jobOf,
  type SavedElement,
  type StillhotDocument,
  structureOf,
  type System,
} from "../document";
import { isPassingShort } from "../hazard";
import type { ElementId, PointId } from "../terms";
import { equalSourceOf } from "./equalSource";
import { type Seam, seamsAround } from "./seams";

/** A part that was left out, and what stands for it. */
export interface CutPart {
  /** where it was cut off */
  readonly at: PointId;
  /** the source of the piece that stands for it */
  readonly source: ElementId;
  readonly openings: number;
  readonly points: number;
  readonly elements: number;
  readonly customers: number;
  /** devices in it that stand open */
  readonly open: readonly ElementId[];
}

/** A piece of a drawing. */
export interface Cutting {
  readonly document: StillhotDocument;
  readonly parts: readonly CutPart[];
  /** of the job: work points and steps that are not in the piece */
  readonly workPointsLeft: number;
  readonly stepsLeft: number;
  readonly scenarioLeft: boolean;
}

/**
 * The piece of a drawing around some of its points: all within so many openings of them, and beyond that all but what is
 * fed by sources that are on, hangs on one point, and energizes every conductor there whatever happens in the piece. An
 * equal source stands for each such part. What else might feed is therefore all kept: ties, machines, customers, whatever
 * is dead as drawn.
 */
export function cutAround(document: StillhotDocument, place: readonly PointId[], openings: number): Cutting {
  const { system } = document;
  const mending = pointsOfMending(document);
  const sources = new Map<Seam, readonly [ElementId, SavedElement]>();
  const seams = seamsAround(system, place, (seam) => {
    if (seam.openings < openings || !mayBeCut(system, seam)) return false;
    if (seam.points.some((it) => mending.has(it))) return false;
    const found = equalSourceOf(document, partOf(system, seam), seam.at);
    if (found === undefined) return false;
    const [id, was] = sourcesOn(system, seam).map((it) => [it, system.elements[it]!] as const)[0]!;
    const { kvLL, phases, ...rest } = found;
    sources.set(seam, [
      id,
      {
        kind: "source",
        ...(typeof was["label"] === "string" ? { label: was["label"] } : {}),
        at: seam.at,
        phases,
        kvLL,
        ...rest,
      } as unknown as SavedElement,
    ]);
    return true;
  });
  const parts = seams.map((seam) => partToTell(system, seam, sources.get(seam)![0]));
  const gone = new Set<string>(seams.flatMap((it) => [...it.points, ...it.elements]));
  const kept = without(system, gone, new Map(sources.values()));
  return { ...withJobOf(document, kept), parts };
}

/** The points that are meant by an id: a structure's, a point itself, or the ends of an element. */
export function placeOf(system: System, id: string): readonly PointId[] {
  if (Object.hasOwn(system.points, id)) return [id as PointId];
  if (Object.hasOwn(system.elements, id)) {
    const saved = system.elements[id as ElementId]!;
    const span = saved["span"];
    return typeof span === "string" ? placeOf(system, span) : (endPointsOf(saved) as PointId[]);
  }
  return structureOf(system, id)?.points ?? [];
}

const sourcesOn = (system: System, { elements }: Seam): ElementId[] =>
  elements.filter((id) => {
    const it = complete(system.elements[id]!);
    return isSupply(it) && it.on;
  });

/** What changes with the grounds, shorts, or goes by an angle of its own cannot be put into one source. */
function mayBeCut(system: System, seam: Seam): boolean {
  const on = sourcesOn(system, seam);
  return (
    on.length > 0 &&
    // A source at its own point stands there as it is.
    seam.points.length > 0 &&
    seam.elements.every((id) => {
      const it = complete(system.elements[id]!);
      if (shortedBy(it) !== "" || isBeside(it)) return false;
      return !isSupply(it) || !it.on || it.inStep;
    })
  );
}

/** Where works of the job take a fault away: with the work left out, a fault in the piece would be a short for good. */
const pointsOfMending = (document: StillhotDocument): ReadonlySet<PointId> =>
  new Set(
    Object.entries(jobOf(document).workPoints).flatMap(([id, { at }]) =>
      doneBy(document, id).some((it) => isPassingShort(document.system, it)) ? [at] : [],
    ),
  );

/** The part that hangs at a seam as a drawing of its own; the rod at the seam stays with the piece. */
function partOf(system: System, { at, points, elements }: Seam): System {
  const { earthOhms: _stays, ...atSeam } = system.points[at]!;
  return {
    frequencyHz: system.frequencyHz,
    points: Object.fromEntries([[at, atSeam], ...points.map((it) => [it, system.points[it]!])]),
    elements: Object.fromEntries(inOrderOf(system, elements)),
  };
}

function inOrderOf(system: System, ids: readonly string[]) {
  const among = new Set(ids);
  return Object.entries(system.elements).filter(([id]) => among.has(id));
}

function without(
  system: System,
  gone: ReadonlySet<string>,
  sources: ReadonlyMap<ElementId, SavedElement>,
): System {
  const stays = ([id]: readonly [string, unknown]) => !gone.has(id);
  const points = Object.fromEntries(Object.entries(system.points).filter(stays));
  const used = new Set(Object.values(points).map((it) => it["on"]));
  const elements = Object.fromEntries(
    Object.entries(system.elements).flatMap(([id, saved]) => {
      const source = sources.get(id as ElementId);
      return source !== undefined ? [[id, source]] : gone.has(id) ? [] : [[id, saved]];
    }),
  );
  for (const { on } of Object.values<SavedElement>(elements)) used.add(on);
  const structures = Object.entries(system.structures ?? {}).filter(([id]) => used.has(id));
  return {
    ...system,
    ...(system.structures === undefined ? {} : { structures: Object.fromEntries(structures) }),
    points,
    elements,
  };
}

function partToTell(system: System, { at, openings, points, elements }: Seam, source: ElementId): CutPart {
  const records = elements.map((id) => [id, complete(system.elements[id]!)] as const);
  return {
    at,
    source,
    openings,
    points: points.length,
    elements: elements.length,
    customers: records.reduce((sum, [, it]) => sum + customersOf(it), 0),
    open: records.flatMap(([id, it]) => (deviceOf(it.kind).opening !== undefined && isOpen(it) ? [id] : [])),
  };
}

const isOpen = (it: object): boolean => {
  const { open } = it as { readonly open?: unknown };
  return open !== undefined && open !== "";
};

/** The job as far as its places and things are in the piece; a scenario tells of the whole and is left out. */
function withJobOf(document: StillhotDocument, system: System): Omit<Cutting, "parts"> {
  const { scenario, ...rest } = document;
  const saved = document.job;
  if (saved === undefined)
    return {
      document: { ...rest, system },
      workPointsLeft: 0,
      stepsLeft: 0,
      scenarioLeft: scenario !== undefined,
    };
  const job = jobOf(document);
  const isThere = (id: unknown): boolean =>
    typeof id !== "string" ||
    Object.hasOwn(system.points, id) ||
    Object.hasOwn(system.elements, id) ||
    Object.hasOwn(system.structures ?? {}, id) ||
    !isDrawn(document.system, id);
  const workPoints = Object.fromEntries(
    Object.entries(job.workPoints)
      .filter(([, { at }]) => isThere(at))
      .map(([id, it]) => [id, it.does === undefined ? it : { ...it, does: it.does.filter(isThere) }]),
  );
  const isWorkPointLeft = (id: unknown) =>
    typeof id === "string" && Object.hasOwn(job.workPoints, id) && !Object.hasOwn(workPoints, id);
  const steps = job.steps.filter((step) => {
    const { element, at } = step as { readonly element?: unknown; readonly at?: unknown };
    return isThere(element) && isThere(at) && !isWorkPointLeft(at);
  });
  const leave = Object.fromEntries(Object.entries(job.leave).filter(([id]) => isThere(id)));
  return {
    document: {
      ...rest,
      system,
      job: {
        ...saved,
        ...(saved["workPoints"] === undefined ? {} : { workPoints }),
        ...(saved["steps"] === undefined ? {} : { steps }),
        ...(saved["leave"] === undefined ? {} : { leave }),
      },
    },
    workPointsLeft: Object.keys(job.workPoints).length - Object.keys(workPoints).length,
    stepsLeft: job.steps.length - steps.length,
    scenarioLeft: scenario !== undefined,
  };
}

const isDrawn = (system: System, id: string): boolean =>
  Object.hasOwn(system.points, id) ||
  Object.hasOwn(system.elements, id) ||
  Object.hasOwn(system.structures ?? {}, id);
