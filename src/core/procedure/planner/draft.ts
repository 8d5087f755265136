import { MOST_ROUNDS } from "../tolerances";
import type { StillhotDocument } from "../../document";
import { nthChoiceOf } from "./bestChoice";
import { type Bypassed, bypassed } from "./bypass";
import { withCustomersOff } from "./customersOff";
import { decide } from "./decide";
import { demandKey, demandOf } from "./demand";
import { draftOf, isWrong } from "./draftOf";
import type { Intent } from "./intent";
import { otherTurns, withFewestVisits } from "./fewestVisits";
import { withFewestCustomerSteps } from "./fewestCustomerSteps";
import { isLeaner, isNoWorse, type OrderDraft } from "./orderDraft";
import { stepsOf } from "./orderOfSteps";
import { playing } from "./playing";
import { purposesOf } from "./purposes";
import { restoredEarly } from "./restoredEarly";
import { repaired } from "./repair";
import { ringsClosedBack, ringsFirst } from "./ringsFirst";
import type { Choice, DeadEnds } from "./search";
import type { PlannedStep } from "./types";
import { type Wishes, wish } from "./wishes";

/**
 * One order of steps under some wishes, with the one customer of a bank that is changed off it where that can be had without
 * a finding; otherwise under these alone.
 *
 * @param nth which of the sets of openings to take, the best being 0
 */
export function draftFor(
  asFound: StillhotDocument,
  from: Wishes,
  deadEnds: DeadEnds,
  nth = 0,
): OrderDraft | undefined {
  const careful = withCustomersOff(asFound, from);
  const draft = careful === from ? undefined : leanDraft(asFound, careful, { ways: [], stuck: [] }, nth);
  return draft?.findings.length === 0 ? draft : leanDraft(asFound, from, deadEnds, nth);
}

/** The order under some wishes, or the one that leaves a clamp alone instead of opening what is beyond it, where that is leaner. */
function leanDraft(
  asFound: StillhotDocument,
  from: Wishes,
  deadEnds: DeadEnds,
  nth: number,
): OrderDraft | undefined {
  const draft = draftUnder(asFound, from, deadEnds, nth);
  const apart = [...(draft?.wishes.pickedUpBeyond ?? [])];
  if (draft === undefined || apart.length === 0) return draft;
  const other = draftUnder(asFound, wish(from, "forbidden", ...apart), { ways: [], stuck: [] }, nth);
  return other !== undefined && isLeaner(other, draft) ? other : draft;
}

/**
 * One order of steps under some wishes: openings by the search, everything else by what the job needs with them, and the
 * whole order played. At the first step in which a rule finds something that can be mended, the finding becomes a wish
 * and the order is made again; what it shares with the one before is not played twice.
 */
function draftUnder(
  asFound: StillhotDocument,
  from: Wishes,
  deadEnds: DeadEnds,
  nth: number,
): OrderDraft | undefined {
  const around = bypassed(asFound);
  const { document } = around;
  let wishes = wish(from, "forbidden", ...around.bypasses.map(({ by }) => by));
  let choice: Choice | undefined;
  let chosenFor = "";
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const demand = demandOf(document, wishes);
    const key = demandKey(demand);
    if (choice === undefined || key !== chosenFor) {
      const next = nthChoiceOf(document, demand, deadEnds, nth);
      // A wish that leaves no way at all is not taken.
      if (next === undefined) return undefined;
      // What was covered and guarded beside other openings may lie dead beside these: they are asked for anew.
      if (choice !== undefined) wishes = { ...wishes, covers: from.covers, barricades: from.barricades };
      [choice, chosenFor] = [next, key];
    }
    const decided = decide(document, choice, wishes);
    if (demandKey(demandOf(document, decided.wishes)) !== key) {
      wishes = decided.wishes;
      continue;
    }
    const { intent } = decided;
    const ordered = (it: Intent): readonly PlannedStep[] =>
      stepsOf(document, it, purposesOf(document, it.choice, demand), around);
    const made = (it: Intent, turned: readonly PlannedStep[]): OrderDraft =>
      draftOf(asFound, it, decided.wishes, turned);
    const inBestTurns = (draft: OrderDraft): OrderDraft =>
      withFewestVisits(
        asFound,
        withFewestCustomerSteps(document, restoredEarly(draft, ordered, made), ordered, made),
        (it) => otherTurns(document, it, demand),
        ordered,
        made,
      );
    const steps = ordered(intent);
    const mended = mendedBy(around, steps, intent, decided.wishes);
    if (mended === undefined)
      return inBestTurns(
        withRingsClosed(asFound, document, draftOf(asFound, intent, wishes, steps), ordered),
      );
    wishes = mended;
  }
  return undefined;
}

/**
 * A draft, or the same with rings of one source closed before anything opens, or before the way that feeds the rest meanwhile
 * opens again, where that spares customers a gap and no rule finds more in it.
 */
function withRingsClosed(
  asFound: StillhotDocument,
  document: StillhotDocument,
  draft: OrderDraft,
  ordered: (intent: Intent) => readonly PlannedStep[],
): OrderDraft {
  const { intent, wishes } = draft;
  const made = (it: Intent): OrderDraft => draftOf(asFound, it, wishes, ordered(it));
  const first = ringsFirst(document, intent, wishes.first);
  const better = first === undefined ? undefined : made(first);
  if (better !== undefined && isNoWorse(better, draft)) return better;
  const back = ringsClosedBack(document, intent, wishes.first);
  const sparing = back === undefined ? undefined : made(back);
  return sparing !== undefined && isNoWorse(sparing, draft) && sparing.darkSteps < draft.darkSteps
    ? sparing
    : draft;
}

/** The wishes that the first findings become that can be mended, playing an order from its first step; nothing where none can. */
function mendedBy(
  { asFound, document }: Bypassed,
  steps: readonly PlannedStep[],
  intent: Intent,
  wishes: Wishes,
): Wishes | undefined {
  for (const { findings, step, state } of playing(asFound, steps)) {
    const mended = repaired(findings.filter(isWrong), { document, intent, step, state, wishes });
    if (mended !== wishes) return mended;
  }
  return undefined;
}
