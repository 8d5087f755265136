import { comesAway, isTransformer, openPhasesOf } from "../../devices";
import { complete, type PermitState, type StillhotDocument, type System, workPointsOf } from "../../document";
import { cablesWithin } from "../../hazard";
import { circuitOf, conductorsToCome, endsOf } from "../../network";
import {
  conductorId,
  type ConductorId,
  type ElementId,
  type Letter,
  LETTERS,
  type Message,
  partsOfConductor,
  type PointId,
} from "../../terms";
import { islandOf } from "../job/joined";
import { beginJob, type JobState } from "../job/state";
import { withKeys } from "./breaking";
import type { Move } from "./closing";
import { madeSound, terminalsOfWork } from "./ending";
import type { Choice } from "./search";

/** A place where a ground set goes on. */
export interface GroundPlace {
  readonly id: ElementId;
  readonly at: PointId;
  readonly phases: string;
  readonly to: "neutral" | "earth" | "both";
  readonly cable: string;
  /** the transformer whose secondary it holds; the work point where there is none */
  readonly bank?: ElementId;
}

/** All that a plan does, before it is put in an order. */
export interface Intent {
  readonly choice: Choice;
  readonly tags: ReadonlySet<ElementId>;
  readonly blocks: ReadonlySet<ElementId>;
  readonly grounds: readonly GroundPlace[];
  readonly covers: ReadonlySet<string>;
  readonly barricades: ReadonlySet<PointId>;
  /** where a wire is down: guarded before anything else */
  readonly wiresDown: ReadonlySet<PointId>;
  readonly secures: ReadonlySet<ElementId>;
  readonly liveHands: ReadonlySet<ElementId>;
  /** why a permit is asked for */
  readonly permit: Message | undefined;
  /** how the job stands with it before the first step */
  readonly found: PermitState;
  readonly waitSeconds: number;
  /** the wait comes before the rest is fed again: what holds the charge hangs on that */
  readonly waitsToSupply: boolean;
  /** tested once more with the grounds on: what a neighbour induces is gone only then */
  readonly retest: boolean;
  /** machines that run in step with a station, stopped by their owners before they are left without it */
  readonly stops: readonly Move[];
  /** what closes a ring of one source before anything is opened */
  readonly rings: readonly Move[];
  /**
   * after how many of the devices that are opened each of the closings for the rest comes, in their order: as soon as its part
   * is cut off from the work; where nothing stands for one it comes after all of them
   */
  readonly restoredAfter: readonly (number | undefined)[];
  /** every move from the work, done, to the line in service */
  readonly back: readonly Move[];
}

/** Phase conductors on which hands come: those of the work points, and every terminal of what is changed or mended. */
export const workedOn = (document: StillhotDocument): ConductorId[] => [
  ...new Set([
    ...workPointsOf(document).flatMap(([, { at, conductors }]) =>
      [...conductors].filter((it) => it !== "N").map((it) => conductorId(at, it as Letter)),
    ),
    ...[...madeSound(document)].flatMap((id) => terminalsOfWork(document.system, id)),
  ]),
];

/** Where hands come to conductors. */
export interface WorkPlace {
  readonly at: PointId;
  /** its phases, which are tested and grounded */
  readonly phases: string;
  /** what is tested: the neutral too where hands come to that */
  readonly tested: string;
}

/**
 * Places where it is tested and grounded, with their phases together: the work points, and each terminal of what is
 * changed that nothing joins to one of them while the work goes on. A neutral that the work joins is tested at both ends.
 */
export function placesOfWork(document: StillhotDocument, ready: System): WorkPlace[] {
  const places = new Map<PointId, string>();
  const held = new Set<number>();
  // Nothing is joined by what comes out of the line.
  const without = withoutThings(ready, madeSound(document));
  const add = (at: PointId, letters: string): void => {
    places.set(at, (places.get(at) ?? "") + letters);
    for (const letter of letters) held.add(islandOf(without, conductorId(at, letter as Letter)));
  };
  for (const [, { at, conductors }] of workPointsOf(document)) add(at, conductors);
  for (const id of [...madeSound(document)].filter((it) => isBetweenGrounds(document, it)))
    for (const terminal of terminalsOfWork(document.system, id)) {
      if (held.has(islandOf(without, terminal)) || !isThereYet(document.system, terminal)) continue;
      const { point, letter } = partsOfConductor(terminal);
      add(point, letter);
    }
  for (const id of madeSound(document)) for (const at of neutralEndsOf(document.system, id)) add(at, "N");
  return placesOf(new Map([...places].flatMap(([at, letters]) => endsOfCable(ready, at, letters))));
}

const placesOf = (places: ReadonlyMap<PointId, string>): WorkPlace[] =>
  [...places].map(([at, letters]) => {
    const tested = LETTERS.filter((it) => letters.includes(it)).join("");
    return { at, phases: tested.replace("N", ""), tested };
  });

/** Work points within a cable: there it is traced and spiked, since nothing is bare. */
export const placesOfSpikes = (document: StillhotDocument): WorkPlace[] =>
  placesOf(
    new Map(
      workPointsOf(document).flatMap(([, { at, conductors }]) =>
        cablesWithin(document.system, at).length === 0 ? [] : [[at, conductors.replace("N", "")] as const],
      ),
    ),
  );

/** Where a place within a cable is tested and grounded: at the cable's ends; any other place there and then. */
function endsOfCable(
  system: System,
  at: PointId,
  letters: string,
  come: ReadonlySet<PointId> = new Set(),
): (readonly [PointId, string])[] {
  const cables = cablesWithin(system, at);
  if (cables.length === 0) return [[at, letters]];
  return cables.flatMap((id) => {
    const element = complete(system.elements[id]!) as { phases: string };
    const far = endsOf(complete(system.elements[id]!)).map(([, end]) => end);
    const own = [...letters].filter((it) => it !== "N" && element.phases.includes(it)).join("");
    return far
      .filter((end) => end !== at && !come.has(end))
      .flatMap((end) => endsOfCable(system, end, own, new Set([...come, at])));
  });
}

/** Both ends of a thing whose neutral is open. */
function neutralEndsOf({ elements }: System, id: ElementId): readonly PointId[] {
  if (!Object.hasOwn(elements, id)) return [];
  const element = complete(elements[id]!);
  return openPhasesOf(element).includes("N") ? endsOf(element).map(([, at]) => at) : [];
}

function withoutThings(system: System, ids: ReadonlySet<ElementId>): System {
  const left = Object.entries(system.elements).filter(([id]) => !ids.has(id as ElementId));
  return { ...system, elements: Object.fromEntries(left) };
}

/** Whether a conductor is there before the work: where all of it is still to come there is nothing to test. */
const isThereYet = (system: System, id: ConductorId): boolean => {
  const circuit = circuitOf(system);
  return !conductorsToCome(circuit).has(circuit.nodeOf.get(id) ?? -1);
};

/** Whether a place of work comes with the work at another: until then there is nothing to test, to ground or to lay hands on. */
export const comesWithWork = (
  { system }: StillhotDocument,
  { at, phases }: Pick<WorkPlace, "at" | "phases">,
): boolean =>
  phases !== "" && [...phases].every((letter) => !isThereYet(system, conductorId(at, letter as Letter)));

/** Whether hands on one side of a thing come to its other side too, so that both sides are held. */
const isBetweenGrounds = ({ system }: StillhotDocument, id: ElementId): boolean =>
  Object.hasOwn(system.elements, id) &&
  !isTransformer(system.elements[id]!) &&
  !comesAway(system.elements[id]!);

/** The drawing with an intent's openings, tags, blocks and grounds, ready for work. */
function systemReady({
  choice,
  tags,
  blocks,
  grounds,
}: Pick<Intent, "choice" | "tags" | "blocks" | "grounds">): System {
  let ready = choice.ready;
  const keys = new Map<ElementId, Record<string, boolean>>();
  for (const id of tags) keys.set(id, { ...keys.get(id), tagged: true });
  for (const id of blocks) keys.set(id, { ...keys.get(id), blocked: true });
  if (keys.size > 0) ready = withKeys(ready, keys);
  if (grounds.length === 0) return ready;
  const sets = grounds.map(({ id, at, phases, to, cable }) => [
    id,
    {
      kind: "ground",
      at,
      phases,
      ...(to === "neutral" ? {} : { to }),
      ...(cable === "" ? {} : { cable }),
    },
  ]);
  return { ...ready, elements: { ...ready.elements, ...Object.fromEntries(sets) } };
}

/** The job as it would stand when work begins, everything done and tested: to ask the rules what is still missing. */
export function stateReady(document: StillhotDocument, intent: Intent): JobState {
  const system = systemReady(intent);
  return {
    ...beginJob(document),
    document: { ...document, system },
    briefed: true,
    permit: intent.permit === undefined ? "none" : "held",
    tested: new Set(
      [...placesOfWork(document, intent.choice.ready), ...placesOfSpikes(document)].flatMap(
        ({ at, tested }) => ([...tested] as Letter[]).map((letter) => conductorId(at, letter)),
      ),
    ),
    covered: intent.covers,
    barricaded: intent.barricades,
    secured: intent.secures,
    detector: "proven",
  };
}
