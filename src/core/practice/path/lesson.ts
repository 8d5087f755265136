import { jobOf, perObject, scenarioOf, type Step, type StillhotDocument } from "../../document";
import { rehearse, type RehearsalFinding, type Rehearsal } from "../../procedure";
import { isJobStep, truthOf } from "../../scenario";
import type { Severity } from "../../terms";

/** The answer of a scenario as the job of the drawing that truly stands there; walks are left out. */
const answered = perObject((scenario: StillhotDocument): StillhotDocument => {
  const steps = (scenarioOf(scenario).answer ?? []).filter((it): it is Step => isJobStep(it));
  return withSteps(truthOf(scenario), steps);
});

const withSteps = (document: StillhotDocument, steps: readonly Step[]): StillhotDocument => ({
  ...document,
  job: { ...document.job, steps },
});

/** The answer of a scenario, played: a lesson goes through its steps. */
export const lessonOf = (scenario: StillhotDocument): Rehearsal => rehearse(answered(scenario));

/** What follows from another thing and teaches nothing by itself: it is a reason only where there is no other. */
const SECOND_BEST: ReadonlySet<string> = new Set(["step-not-possible", "left-behind", "customers-out"]);

const RANK: Readonly<Record<Severity, number>> = { danger: 0, warning: 1, note: 2 };

interface MistakeFound {
  readonly finding: RehearsalFinding;
  readonly step: number;
}

/**
 * Why a step of a lesson stands where it does: the same work without it is played, and what goes wrong then is the reason,
 * the worst and the soonest first. Nothing where nothing goes wrong that a rule is about.
 */
export function reasonFor(scenario: StillhotDocument, index: number): RehearsalFinding | undefined {
  const whole = answered(scenario);
  const known = new Set(foundIn(rehearse(whole)).map(({ finding }) => keyOf(finding)));
  const steps = jobOf(whole).steps.filter((_, at) => at !== index);
  const fresh = foundIn(rehearse(withSteps(whole, steps))).filter(
    ({ finding }) => !known.has(keyOf(finding)),
  );
  return fresh.sort((a, b) => weightOf(a) - weightOf(b) || a.step - b.step || sourced(a) - sourced(b))[0]
    ?.finding;
}

const weightOf = ({ finding: { rule, severity } }: MistakeFound): number =>
  SECOND_BEST.has(rule) ? RANK.note + 1 : RANK[severity];

/** A rule that is written down somewhere comes before one that is not. */
const sourced = ({ finding: { citation } }: MistakeFound): number => (/^\d/.test(citation ?? "") ? 0 : 1);

const keyOf = ({ rule, where }: RehearsalFinding): string => `${rule} ${where}`;

const foundIn = ({ steps, findings }: Rehearsal): MistakeFound[] => [
  ...steps.flatMap((played, step) => played.findings.map((finding) => ({ finding, step }))),
  ...findings.map((finding) => ({ finding, step: steps.length })),
];
