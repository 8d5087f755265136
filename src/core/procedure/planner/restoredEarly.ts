import { isNoWorse, type OrderDraft } from "./orderDraft";
import type { Intent } from "./intent";
import type { PlannedStep } from "./types";

/**
 * A draft, or the same with each closing for the rest as early as it can be: as soon as its own part is cut off from the
 * work, while other openings are still to be made. What would feed the work, or join two supplies, the rules find when the
 * order is played, and it is left where it was.
 *
 * @param ordered the steps of an intent
 * @param made an intent and its steps, played
 */
export function restoredEarly(
  draft: OrderDraft,
  ordered: (intent: Intent) => readonly PlannedStep[],
  made: (intent: Intent, steps: readonly PlannedStep[]) => OrderDraft,
): OrderDraft {
  const { restored, order, openings } = draft.intent.choice;
  let best = draft;
  // A wire in the road is made dead from both sides before anybody gets supply back.
  if (draft.intent.wiresDown.size > 0) return draft;
  restored.moves.forEach(({ opening }, nth) => {
    // What is opened only to take load off another stays open until that one is.
    if (openings.some(({ element }) => element === opening.element)) return;
    for (let after = best.intent.restoredAfter[nth - 1] ?? 1; after < order.order.length; after++) {
      const restoredAfter = restored.moves.map((_, k) => (k === nth ? after : best.intent.restoredAfter[k]));
      const intent = { ...best.intent, restoredAfter };
      const early = made(intent, ordered(intent));
      if (!isNoWorse(early, best) || early.darkSteps >= best.darkSteps) continue;
      best = early;
      break;
    }
  });
  return best;
}
