import { GROUNDING_CABLES, isLiftedOff, isOwners, lowSidesOf, openingOf } from "../../devices";
import {
  complete,
  jobOf,
  type Step,
  type StillhotDocument,
  type System,
  phasesAtPoint,
  transformersOf,
  workPointsOf,
} from "../../document";
import { isBarricaded } from "../../hazard";
import { circuitOf, reachOf, standingOf } from "../../network";
import { conductorId, type ElementId, type Letter, type Message, type PointId } from "../../terms";
import { capacitorsOf, terminalsOf, wasFoundCharged } from "../effects/capacitors";
import { DISCHARGE_SECONDS } from "../effects/trappedCharge";
import { islandOf } from "../job/joined";
import { permitReasonForElement, permitReasonForWork } from "../job/section";
import { beginJob } from "../job/state";
import { wiresDown } from "../job/wiresDown";
import { leadsToSource } from "../rules/groundReturn";
import { looseHardware } from "../rules/looseHardware";
import { secondaryBackfeed } from "../rules/secondaryBackfeed";
import { type GroundPlace, type Intent, placesOfWork, stateReady, workedOn } from "./intent";
import { backToService } from "./backToService";
import { machinesInStep } from "./breaking";
import type { Move } from "./closing";
import { demandKey, demandOf } from "./demand";
import { closableOnto } from "./marks";
import { documentOn, openingsOf } from "./openings";
import { repaired } from "./repair";
import type { Choice } from "./search";
import type { Wishes } from "./wishes";

/** What is decided of a job, and the wishes that it led to. */
export interface Decided {
  readonly intent: Intent;
  readonly wishes: Wishes;
}

/** What a set of openings needs beside itself: what is told from the drawing alone, without an assessment. */
export function decide(document: StillhotDocument, choice: Choice, wishes: Wishes): Decided {
  const marks = marksFor(document, choice, wishes);
  const { stops, back } = withStopsFirst(document, backToService(document, choice.ready, wishes.first));
  const intent: Intent = {
    choice,
    ...marks,
    grounds: groundsOf(document, choice, wishes),
    covers: wishes.covers,
    barricades: wishes.barricades,
    wiresDown: guardedPlaces(document),
    secures: new Set([...wishes.secures, ...looseNear(document, choice)]),
    liveHands: wishes.liveHands,
    permit: permitReason(document, choice, back),
    found: jobOf(document).permit,
    waitsToSupply: wishes.waitToSupply,
    waitSeconds: wishes.wait || capacitorsLeft(document, choice).length > 0 ? DISCHARGE_SECONDS : 0,
    retest: wishes.retest,
    stops,
    rings: [],
    restoredAfter: [],
    back,
  };
  const state = stateReady(document, intent);
  const more = workPointsOf(document).reduce(
    (sum, [id]) => {
      const step: Step = { do: "work", at: id };
      const findings = asList(secondaryBackfeed.check!(step, state, state)).map(({ where }) => ({
        rule: secondaryBackfeed.id,
        where,
      }));
      return repaired(findings, { document, intent, step, state, wishes: sum });
    },
    capacitorWishes(document, intent, wishes),
  );
  if (more === wishes) return { intent, wishes };
  return demandKey(demandOf(document, more)) === demandKey(demandOf(document, wishes))
    ? decide(document, choice, more)
    : { intent, wishes: more };
}

/**
 * The way back without the stops of machines that ran in step with a station as found: cut off from it they would go on by
 * themselves, so their owners stop them before anything is opened.
 */
export function withStopsFirst(
  document: StillhotDocument,
  moves: readonly Move[],
): Pick<Intent, "stops" | "back"> {
  const inStep = machinesInStep(document.system);
  const isStop = ({ opening }: Move): boolean => opening.moves === "machine" && inStep.has(opening.element);
  return { stops: moves.filter(isStop), back: moves.filter((it) => !isStop(it)) };
}

/** Tags and blocks: what could be closed onto the work is tagged, and blocked where a tag does not hold it. */
function marksFor(
  document: StillhotDocument,
  choice: Choice,
  wishes: Wishes,
): Pick<Intent, "tags" | "blocks"> {
  const tags = new Set(wishes.tags);
  const blocks = new Set(wishes.blocks);
  for (const id of closableOnto(document, choice)) {
    const element = complete(document.system.elements[id]!);
    const { tagged, blocked } = element as { tagged?: boolean; blocked?: boolean };
    if (tagged === false) tags.add(id);
    if (openingOf(element)?.automatic === true && blocked === false) blocks.add(id);
  }
  for (const opening of choice.openings) {
    const { element } = opening;
    const { blocked } = complete(document.system.elements[element]!) as { blocked?: boolean };
    if (isOwners(opening)) tags.add(element);
    if (blocked === false && (isOwners(opening) || (isLiftedOff(opening) && tags.has(element))))
      blocks.add(element);
  }
  return { tags: sorted(tags), blocks: sorted(blocks) };
}

const sorted = <Item extends string>(items: ReadonlySet<Item>): ReadonlySet<Item> =>
  new Set([...items].sort());

/** Where a wire is down, whatever the work is about: people come near both of its ends. One guard holds for a structure. */
export function guardedPlaces({ system }: StillhotDocument): ReadonlySet<PointId> {
  const guarded = new Set<PointId>();
  for (const { ends } of wiresDown(system))
    for (const at of ends) if (!isBarricaded(system, guarded, at)) guarded.add(at);
  return guarded;
}

/** A ground set at every work point, on every phase there that is dead, and on every secondary that is held by one. */
function groundsOf(
  document: StillhotDocument,
  choice: Choice,
  { groundsAt, rodsAt, cables }: Wishes,
): GroundPlace[] {
  const { system } = document;
  const taken = new Set(Object.keys(system.elements));
  const nextId = (): ElementId => {
    for (let n = 1; ; n++)
      if (!taken.has(`g${n}`)) {
        taken.add(`g${n}`);
        return `g${n}` as ElementId;
      }
  };
  const places = new Map<PointId, { phases: string; bank?: ElementId }>();
  for (const { at, phases } of placesOfWork(document, choice.ready))
    if (phases !== "") places.set(at, { phases: deadPhases(choice.ready, at, phases) });
  for (const at of groundsAt) {
    const bank = transformersOf(system).find(([, it]) => lowSidesOf(it).some((side) => side.at === at))?.[0];
    // Nobody puts a set on what would still be live.
    const phases = deadPhases(choice.ready, at, places.get(at)?.phases ?? "");
    if (phases === "") continue;
    if (places.has(at)) places.set(at, { ...places.get(at)!, phases });
    else places.set(at, { phases, ...(bank === undefined ? {} : { bank }) });
  }
  const sets = [...places].map(([at, place]) => ({
    at,
    to: rodsAt.has(at) ? ("both" as const) : earthEndAt(choice.ready, at, place.bank !== undefined),
    ...place,
  }));
  // Beyond an open neutral a set has its way home by the others alone: those go on first, and come off last.
  const isHome = ({ at, to }: (typeof sets)[number]) => to === "earth" || leadsToSource(choice.ready, at);
  return [...sets.filter(isHome), ...sets.filter((it) => !isHome(it))].map((it) => {
    const id = nextId();
    return { id, cable: cables.get(id) ?? GROUNDING_CABLES[0], ...it };
  });
}

/**
 * Where the earth end of a set goes: onto a neutral that a source or a rod holds to earth, or at a bank's low side onto its star.
 * Onto any other it would ground nothing: it goes to a rod, and to that neutral too, which is a conductor like the rest.
 */
function earthEndAt(system: System, at: PointId, isLowSide: boolean): GroundPlace["to"] {
  const circuit = circuitOf(system);
  const neutral = circuit.nodeOf.get(conductorId(at, "N"));
  if (neutral === undefined) return "earth";
  if (isLowSide || phasesAtPoint(system, at).includes("1")) return "neutral";
  const { tied } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return tied[neutral] === 1 ? "neutral" : "both";
}

/** Phases of a point that nothing reaches, those of the work among them in any case: all of them go to the set. */
function deadPhases(after: System, at: PointId, worked: string): string {
  const circuit = circuitOf(after);
  const { how } = reachOf(circuit, standingOf(circuit), { groundsLifted: true });
  return [...phasesAtPoint(after, at)]
    .filter((it) => worked.includes(it) || how[circuit.nodeOf.get(conductorId(at, it as Letter))!] === 0)
    .join("");
}

/** Loose or failing hardware on a pole that these openings shake. */
function looseNear(document: StillhotDocument, { openings }: Choice): ElementId[] {
  const state = beginJob(document);
  return openings.flatMap(({ element }) =>
    asList(looseHardware.check!({ do: "open", element }, state, state)).map(
      ({ where }) => where as ElementId,
    ),
  );
}

const asList = <Item>(items: Item | readonly Item[] | undefined): readonly Item[] =>
  items === undefined ? [] : Array.isArray(items) ? (items as readonly Item[]) : [items as Item];

/** Why the job asks for a permit; nothing where it does not. */
function permitReason(
  document: StillhotDocument,
  { openings, restored }: Choice,
  back: readonly Move[],
): Message | undefined {
  const moved = [...restored.moves, ...back].map(({ opening }) => opening);
  for (const { element } of [...openings, ...moved]) {
    const reason = permitReasonForElement(document, element);
    if (reason !== undefined) return reason;
  }
  for (const [, workPoint] of workPointsOf(document)) {
    const reason = permitReasonForWork(document, workPoint);
    if (reason !== undefined) return reason;
  }
  return undefined;
}

/** Capacitors with a charge that still hang on what is grounded when the openings are made. */
function capacitorsLeft(document: StillhotDocument, choice: Choice) {
  const { ready } = choice;
  const found = beginJob(document);
  const worked = new Set(workedOn(document).map((id) => islandOf(ready, id)));
  return capacitorsOf({ ...found, document: documentOn(document, ready) }).filter(
    ([, it]) => wasFoundCharged(found, it) && terminalsOf(it).some((id) => worked.has(islandOf(ready, id))),
  );
}

/** A capacitor that the grounds of the job do not short at every terminal is taken off. */
function capacitorWishes(document: StillhotDocument, { choice, grounds }: Intent, wishes: Wishes): Wishes {
  const { ready } = choice;
  const held = new Set(
    grounds.flatMap(({ at, phases }) =>
      [...phases].map((it) => islandOf(ready, conductorId(at, it as Letter))),
    ),
  );
  const unshorted = capacitorsLeft(document, choice).filter(
    ([, it]) => !terminalsOf(it).every((id) => held.has(islandOf(ready, id))),
  );
  const keys = openingsOf(document)
    .all.filter(({ element }) => unshorted.some(([id]) => id === element))
    .map(({ key }) => key);
  if (keys.length === 0 || keys.every((it) => wishes.forced.includes(it))) return wishes;
  return { ...wishes, forced: [...new Set([...wishes.forced, ...keys])].sort() };
}
