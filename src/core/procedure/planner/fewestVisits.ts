import { isOwners } from "../../devices";
import { type StillhotDocument, structureOf, type System, workPointsOf } from "../../document";
import type { StructureId } from "../../terms";
import { type Visit, visitsOf } from "../job/visits";
import { meetsSupply } from "./backToService";
import { orderOpenings } from "./breaking";
import { inThisOrder, type Move, systemWith } from "./closing";
import { isNoWorse, type OrderDraft } from "./orderDraft";
import { type Intent } from "./intent";
import type { Opening } from "./openings";
import { placeOf } from "./said";
import type { Demand } from "./search";
import type { PlannedStep } from "./types";

/**
 * A draft, or the same switching in other turns where that saves a visit: no rule finds more in it, and nobody is longer
 * without supply. Turn after turn, as long as one saves something.
 *
 * @param others the same intent with something in another turn
 * @param ordered the steps of an intent
 * @param made an intent and its steps, played
 */
export function withFewestVisits(
  asFound: StillhotDocument,
  draft: OrderDraft,
  others: (intent: Intent) => readonly Intent[],
  ordered: (intent: Intent) => readonly PlannedStep[],
  made: (intent: Intent, steps: readonly PlannedStep[]) => OrderDraft,
): OrderDraft {
  const visits = visitsOf(asFound, draft.steps);
  if (isNowhereTwice(visits)) return draft;
  for (const other of others(draft.intent)) {
    const steps = ordered(other);
    if (visitsOf(asFound, steps).length >= visits.length) continue;
    const better = made(other, steps);
    if (isNoWorse(better, draft)) return withFewestVisits(asFound, better, others, ordered, made);
  }
  return draft;
}

const isNowhereTwice = (visits: readonly Visit[]): boolean =>
  new Set(visits.map(({ structure }) => structure)).size === visits.length;

/**
 * An intent with something in another turn: opened last where the work is, brought back at one structure in one go, or a
 * motor's main opened there as late as can be. What nothing could break in such a turn is left out.
 */
export function otherTurns(document: StillhotDocument, intent: Intent, demand: Demand): Intent[] {
  const { choice, grounds, back } = intent;
  const { system } = document;
  const atWork = [...grounds, ...workPointsOf(document).map(([, it]) => it)].map(
    ({ at }) => structureOf(system, at)?.id,
  );
  const opened = [...new Set(atWork)]
    .map((structure) => orderOpenings(document, choice.openings, demand.first, structure))
    .filter(({ stuck }) => stuck.length === 0)
    .map((order): Intent => ({ ...intent, choice: { ...choice, order } }));
  const brought = regrouped(system, back, new Set(atWork))
    .map((moves): Intent => ({
      ...intent,
      back: inThisOrder(document, back[0]!.before, moves),
    }))
    .filter((it) => suppliesThatMeet(it) <= suppliesThatMeet(intent));
  return [...opened, ...brought, ...keptOffLate(document, intent, demand)];
}

/** A motor's main opened on the way back, before the first thing that closes where it is, instead of at the beginning. */
function keptOffLate(document: StillhotDocument, intent: Intent, { first }: Demand): Intent[] {
  const { choice, back, restoredAfter } = intent;
  return choice.openings
    .filter((it) => first.has(it.key) && isOwners(it))
    .flatMap((opening) => {
      const { element } = opening;
      const here = whereDone(document.system, opening);
      const comesBack = back.findIndex((it) => whereDone(document.system, it.opening) === here);
      const openings = choice.openings.filter((it) => it !== opening);
      const order = orderOpenings(document, openings, first);
      if (order.stuck.length > 0 || comesBack === -1 || back[comesBack]!.opening.element === element)
        return [];
      const turn = choice.order.order.findIndex((it) => it.opening === opening);
      return {
        ...intent,
        choice: { ...choice, openings, order, ready: systemWith(document, choice.ready, opening) },
        tags: without(intent.tags, element),
        blocks: without(intent.blocks, element),
        restoredAfter: restoredAfter.map((opened) => (opened! > turn ? opened! - 1 : opened)),
        back: inThisOrder(
          document,
          systemWith(document, back[0]!.before, opening),
          back.toSpliced(comesBack, 0, { ...back[comesBack]!, way: "off", opening }),
        ),
      };
    });
}

/** The structure at which one stands to move a thing: of one that stands between two, that on its source side. */
const whereDone = (system: System, { element }: Opening): StructureId | undefined =>
  structureOf(system, placeOf(system, element))?.id;

const without = <T>(all: ReadonlySet<T>, one: T): Set<T> => new Set([...all].filter((it) => it !== one));

/** How many closings of the way back join two supplies. */
export const suppliesThatMeet = ({ back }: Intent): number =>
  back.filter(({ way, before, opening }) => way === "on" && meetsSupply(before, opening)).length;

/** Moves with one of them beside another at the same structure, or first where the work was. */
function regrouped(
  system: System,
  moves: readonly Move[],
  atWork: ReadonlySet<StructureId | undefined>,
): (readonly Move[])[] {
  const places = moves.map(({ opening }) => whereDone(system, opening));
  return places.flatMap((place, late) => {
    const early = places.slice(0, late).lastIndexOf(place);
    if (early === -1 && !atWork.has(place)) return [];
    const moved = [moves.toSpliced(late, 1).toSpliced(early + 1, 0, moves[late]!)];
    return early === -1 ? moved : [...moved, moves.toSpliced(late, 0, moves[early]!).toSpliced(early, 1)];
  });
}
