import { type StillhotDocument, structureOf, type System, workPointsOf } from "../../document";
import type { StructureId } from "../../terms";
import { type Visit, visitsOf } from "../job/visits";
import { meetsSupply } from "./backToService";
import { orderOpenings } from "./breaking";
import { inThisOrder, type Move } from "./closing";
import { isNoWorse, type OrderDraft } from "./orderDraft";
import { type Intent } from "./intent";
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
 * An intent with something in another turn: opened last where the work is, or brought back at one structure in one go.
 * What nothing could break in such a turn is left out.
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
  return [...opened, ...brought];
}

/** How many closings of the way back join two supplies. */
export const suppliesThatMeet = ({ back }: Intent): number =>
  back.filter(({ way, before, opening }) => way === "on" && meetsSupply(before, opening)).length;

/** Moves with one of them beside another at the same structure, or first where the work was. */
function regrouped(
  system: System,
  moves: readonly Move[],
  atWork: ReadonlySet<StructureId | undefined>,
): (readonly Move[])[] {
  const places = moves.map(({ opening }) => structureOf(system, opening.element)?.id);
  return places.flatMap((place, late) => {
    const early = places.slice(0, late).lastIndexOf(place);
    if (early === -1 && !atWork.has(place)) return [];
    const moved = [moves.toSpliced(late, 1).toSpliced(early + 1, 0, moves[late]!)];
    return early === -1 ? moved : [...moved, moves.toSpliced(late, 0, moves[early]!).toSpliced(early, 1)];
  });
}
