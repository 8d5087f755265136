import { MOST_ROUNDS } from "../tolerances";
import type { StillhotDocument } from "../../document";
import { beginJob } from "../job/state";
import { type CustomersOutOfJob, customersOutIn } from "../rehearsal/customers";
import type { PlayedStep } from "../rehearsal/play";
import { findingsAtEnd } from "../rules";
import type { RehearsalFinding } from "../rules/rule";
import { nthChoiceOf } from "./bestChoice";
import { type Bypassed, bypassed } from "./bypass";
import { decide } from "./decide";
import { demandKey, demandOf } from "./demand";
import type { Intent } from "./intent";
import { stepsOf } from "./orderOfSteps";
import { playing } from "./playing";
import { purposesOf } from "./purposes";
import { repaired } from "./repair";
import type { Choice, DeadEnds } from "./search";
import type { PlannedStep } from "./types";
import { type Wishes, wish } from "./wishes";

/** One order of steps, played, and the decisions behind it. */
export interface Draft {
  readonly intent: Intent;
  readonly wishes: Wishes;
  readonly steps: readonly PlannedStep[];
  readonly customers: CustomersOutOfJob;
  /** dangers and warnings that no repair took away */
  readonly findings: readonly RehearsalFinding[];
}

/**
 * One order of steps under some wishes: openings by the search, everything else by what the job needs with them, and the
 * whole order played. At the first step in which a rule finds something that can be mended, the finding becomes a wish
 * and the order is made again; what it shares with the one before is not played twice.
 *
 * @param nth which of the sets of openings to take, the best being 0
 */
export function draftFor(
  asFound: StillhotDocument,
  from: Wishes,
  deadEnds: DeadEnds,
  nth = 0,
): Draft | undefined {
  const around = bypassed(asFound);
  const { document } = around;
  let wishes = wish(from, "forbidden", ...around.bypasses.map(({ by }) => by));
  let draft: Draft | undefined;
  let choice: Choice | undefined;
  let chosenFor = "";
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const demand = demandOf(document, wishes);
    const key = demandKey(demand);
    if (choice === undefined || key !== chosenFor) {
      const next = nthChoiceOf(document, demand, deadEnds, nth);
      // A wish that leaves no way at all is not taken.
      if (next === undefined) return draft;
      [choice, chosenFor] = [next, key];
    }
    const decided = decide(document, choice, wishes);
    if (demandKey(demandOf(document, decided.wishes)) !== key) {
      wishes = decided.wishes;
      continue;
    }
    const { intent } = decided;
    const steps = stepsOf(document, intent, purposesOf(document, choice, demand), around);
    const { played, mended } = playUntilMended(around, steps, intent, decided.wishes);
    if (mended !== undefined) {
      wishes = mended;
      continue;
    }
    const findings = [...played.flatMap((it) => it.findings), ...findingsAtEnd(played.at(-1)!.state)].filter(
      isWrong,
    );
    if (draft === undefined || findings.length < draft.findings.length)
      draft = {
        intent,
        wishes,
        steps,
        findings,
        customers: customersOutIn({ begin: beginJob(asFound), steps: played }),
      };
    return draft;
  }
  return draft;
}

/** Plays an order up to the first step whose findings become a wish; to its end where none does. */
function playUntilMended(
  { asFound, document }: Bypassed,
  steps: readonly PlannedStep[],
  intent: Intent,
  wishes: Wishes,
): { readonly played: readonly PlayedStep[]; readonly mended: Wishes | undefined } {
  const played: PlayedStep[] = [];
  for (const it of playing(asFound, steps)) {
    played.push(it);
    const { step, state } = it;
    const mended = repaired(it.findings.filter(isWrong), { document, intent, step, state, wishes });
    if (mended !== wishes) return { played, mended };
  }
  return { played, mended: undefined };
}

const isWrong = ({ severity }: { readonly severity: string }): boolean => severity !== "note";
