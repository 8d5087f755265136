import { perObject, type Step, type StillhotDocument, workPointsOf } from "../../document";
import { alternativesTo } from "./alternatives";
import { draftFor } from "./draft";
import type { OrderDraft } from "./orderDraft";
import { beginJob } from "../job/state";
import { customersOutIn } from "../rehearsal/customers";
import type { RehearsalFinding } from "../rules/rule";
import { priced } from "./price";
import type { DeadEnds } from "./search";
import { switchingFor } from "./switching";
import type { Plan, Uncontrolled } from "./types";
import { stillThreatening, uncontrolledBy } from "./uncontrolled";
import { type Strictness, STRICTEST } from "./ways";
import { NO_WISHES } from "./wishes";

/** What is asked for beside the order. */
export interface PlanOptions {
  /** other ways to do the job, with their price (true) */
  readonly alternatives?: boolean;
}

/**
 * An order of steps from as found to safe to work and on to the line in service that passes every rule of the rehearsal:
 * fewest customers out while work goes on, then at the worst, then fewest operations, then fewest visits to a structure, then
 * least walking. Where there is none, what threatens and what would control it.
 */
export function plan(document: StillhotDocument, { alternatives = true }: PlanOptions = {}): Plan {
  const asked = withoutSteps(document);
  const found = firstPlan(asked);
  if (!alternatives || found.draft === undefined || !found.plan.ok) return found.plan;
  return { ...found.plan, alternatives: alternativesTo(asked, found.draft) };
}

/** A document with the steps of its job replaced by the planned ones: one object for each, so that what is worked out of it is found again. */
export const planDocument: (document: StillhotDocument) => StillhotDocument = perObject((document) => {
  const steps = plan(document, { alternatives: false }).steps.map(({ why: _why, ...step }): Step => step);
  return { ...document, job: { ...document.job, steps } };
});

/** Steps that the file has already do not matter to a plan; nor do their marks. */
const withoutSteps = perObject((document: StillhotDocument): StillhotDocument => ({
  ...document,
  job: { ...document.job, steps: [] },
}));

interface FirstPlan {
  readonly plan: Plan;
  readonly draft: OrderDraft | undefined;
}

/** From strict to lenient: what is not to be had strictly is told with what the rules find in it. */
const STRICTNESSES: readonly Strictness[] = [
  STRICTEST,
  { visibleGaps: true, asRestored: false },
  { visibleGaps: false, asRestored: true },
  { visibleGaps: false, asRestored: false },
];

const firstPlan = perObject((document: StillhotDocument): FirstPlan => {
  if (workPointsOf(document).length === 0) return switchingAlone(document);
  let deadEnds: DeadEnds | undefined;
  let best: OrderDraft | undefined;
  for (const strictness of STRICTNESSES) {
    const ends: DeadEnds = { ways: [], stuck: [] };
    const draft = draftFor(document, { ...NO_WISHES, strictness }, ends);
    deadEnds ??= ends;
    if (draft === undefined) continue;
    if (best === undefined || draft.findings.length < best.findings.length) best = draft;
    if (best.findings.length === 0) break;
  }
  if (best === undefined) return noOrder(document, uncontrolledBy(document, deadEnds!));
  const uncontrolled = best.findings.length === 0 ? [] : stillThreatening(document, best);
  return {
    draft: best,
    plan: {
      ...priced(document, best),
      ok: best.findings.length === 0,
      alternatives: [],
      uncontrolled,
      findings: eachOnce(best.findings),
    },
  };
});

/** Where nobody has said where hands go: the switching that leaves things as they are to be left, if they stand otherwise. */
function switchingAlone(document: StillhotDocument): FirstPlan {
  const draft = switchingFor(document);
  if (draft === undefined) return noOrder(document);
  const { findings } = draft;
  return {
    draft: undefined,
    plan: {
      ...priced(document, draft),
      ok: findings.length === 0,
      alternatives: [],
      uncontrolled: [],
      findings: eachOnce(findings),
    },
  };
}

/** What several steps of an order have in common is said of the order once. */
function eachOnce(findings: readonly RehearsalFinding[]): readonly RehearsalFinding[] {
  const told = new Map(
    findings.map((it) => [`${it.rule} ${it.where} ${JSON.stringify(it.message)}`, it] as const),
  );
  return [...told.values()];
}

/** What is said where there is no order: nothing was controlled; or nobody has said where hands go, and nothing stands otherwise than it is to be left. */
const noOrder = (document: StillhotDocument, uncontrolled: readonly Uncontrolled[] = []): FirstPlan => ({
  plan: {
    ok: false,
    steps: [],
    customersOut: 0,
    customers: customersOutIn({ begin: beginJob(document), steps: [] }),
    criticalOut: [],
    operations: 0,
    alternatives: [],
    uncontrolled,
    findings: [],
  },
  draft: undefined,
});
