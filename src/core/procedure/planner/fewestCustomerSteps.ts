import { isDeadFront, isOwners } from "../../devices";
import { complete, type StillhotDocument } from "../../document";
import { inThisOrder, type Move, systemMoved } from "./closing";
import { fedIn } from "./fedIn";
import { suppliesThatMeet } from "./fewestVisits";
import { type Intent, workedOn } from "./intent";
import { isNoWorse, type OrderDraft } from "./orderDraft";
import type { PlannedStep } from "./types";

/**
 * A draft, or the same with two closings of the way back in the other turn, as long as that leaves customers dark for fewer
 * steps and no rule finds more in it: where it does not matter otherwise the many come back before the few.
 *
 * @param ordered the steps of an intent
 * @param made an intent and its steps, played
 */
export function withFewestCustomerSteps(
  document: StillhotDocument,
  draft: OrderDraft,
  ordered: (intent: Intent) => readonly PlannedStep[],
  made: (intent: Intent, steps: readonly PlannedStep[]) => OrderDraft,
): OrderDraft {
  if (draft.darkSteps === 0) return draft;
  for (const other of swapped(document, draft.intent, draft.wishes.first)) {
    const better = made(other, ordered(other));
    if (isNoWorse(better, draft) && better.darkSteps < draft.darkSteps)
      return withFewestCustomerSteps(document, better, ordered, made);
  }
  return draft;
}

/** The same intent with two neighbours of the way back in the other turn. */
function swapped(document: StillhotDocument, intent: Intent, first: ReadonlySet<string>): Intent[] {
  const { back } = intent;
  return back.slice(1).flatMap((later, at) => {
    const earlier = back[at]!;
    if (later.way === "off" || earlier.way === "off") return [];
    if (later.opening.element === earlier.opening.element) return [];
    // What closes last on purpose, and a customer's own switch, waits for the volts to be read.
    if (isOwners(later.opening) || first.has(later.opening.key)) return [];
    const moves = back.toSpliced(at, 2, later, earlier);
    const other = { ...intent, back: inThisOrder(document, back[0]!.before, moves) };
    // What was changed is energized from a distance where it can be, and not by a connector at arm's length.
    if (isAtArmsLength(document, later) && feedsWhatWasChanged(document, other.back[at]!)) return [];
    return suppliesThatMeet(other) <= suppliesThatMeet(intent) ? [other] : [];
  });
}

/** Whether a move puts the supply's volts on what the job works on. */
function feedsWhatWasChanged(document: StillhotDocument, move: Move): boolean {
  const wasFed = fedIn(move.before);
  const isFed = fedIn(systemMoved(document, move));
  return workedOn(document).some((it) => isFed(it) && !wasFed(it));
}

const isAtArmsLength = ({ system }: StillhotDocument, { opening }: Move): boolean =>
  isDeadFront(complete(system.elements[opening.element]!));
