import { jobOf, type Step } from "../document";
import { stepBy } from "../steps";
import type { PointId } from "../terms";
import { play, readingsOf, type RehearsalFinding, isHarm } from "../procedure";
import { type Action, isJobStep } from "./actions";
import { worldAt } from "./act";
import type { Attempt } from "./attempt";
import { answerTo, type Planner, stepFor } from "./checks";
import { matches } from "./conditions";
import type { LogEntry } from "./log";
import { knowing, placesOfFact, revealsOf, type World } from "./world";

/** A step that something was wrong with: what it broke, and what nobody knew before it though it was true. */
export interface Mistake {
  readonly entry: LogEntry;
  readonly findings: readonly RehearsalFinding[];
  readonly unseen: readonly RehearsalFinding[];
  readonly didNotKnow: readonly string[];
}

/**
 * What would have been better than a step, found by trying: a test where there was voltage, else what would have shown the
 * hidden fact without which the coach says nothing, else the step of the order that takes away what was wrong.
 */
export function betterStep(attempt: Attempt, mistake: Mistake, plan?: Planner): Step | undefined {
  const { n, action } = mistake.entry;
  if (action === undefined || !isJobStep(action)) return undefined;
  const before = worldAt(attempt, n - 1);
  return (
    testThatShows(before, action, mistake) ??
    lookThatShows(attempt, before, action, mistake) ??
    stepThatMends(before, action, mistake, stepsLeft(attempt, n, before, plan))
  );
}

/** A test of what the hands went to, where it was live and nobody had been told so. */
function testThatShows({ truth }: World, step: Step, { unseen, entry }: Mistake): Step | undefined {
  // Hands go to a point: what names a structure as a whole only looks at it, or keeps people off.
  const at = (step.do === "work" ? jobOf(truth.document).workPoints[step.at]?.at : step.at) as
    | PointId
    | undefined;
  if (at === undefined || step.do === "test" || (unseen.length === 0 && !isHarm(entry.result.consequence)))
    return undefined;
  const { phases } = step;
  const test = stepBy("test", { at, ...(phases === undefined ? {} : { phases }) });
  const isNews = [...readingsOf(truth, test)].some(
    ([id, { isWithoutNominalVolts }]) => !isWithoutNominalVolts && !truth.readings.has(id),
  );
  return isNews ? test : undefined;
}

/** The first way to a fact by which what could not be seen would have been. */
function lookThatShows(
  { document }: Attempt,
  before: World,
  step: Step,
  { unseen, didNotKnow, entry: { n } }: Mistake,
): Step | undefined {
  for (const id of didNotKnow) {
    const { known } = knowing(document, before, [id], n, "seen");
    const { findings } = play(known, step);
    if (!unseen.some(({ rule }) => findings.some((it) => it.rule === rule))) continue;
    const [way] = revealsOf(document, id);
    const [place] = placesOfFact(document, id);
    if (way !== undefined) return stepFor(way);
    if (place !== undefined) return { do: "inspect", at: place };
  }
  return undefined;
}

/**
 * The first step of an order that, done before or in its place, leaves nothing of the worst that was wrong. Where several
 * things were as bad, one step seldom mends all: it mends the first that one step can.
 */
function stepThatMends(
  world: World,
  step: Step,
  { findings }: Mistake,
  left: readonly Step[],
): Step | undefined {
  const dangers = findings.filter(({ severity }) => severity === "danger").map((it) => it.rule);
  // Where no rule was broken, only the harm that was done is to be spared.
  const worst = dangers.length > 0 ? new Set(dangers) : [findings[0]?.rule];
  for (const rule of worst) {
    const found = stepWithout(world, step, rule, left);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The first step of an order that, done before or in its place, harms nobody and breaks the rule no more. */
function stepWithout(
  { truth }: World,
  step: Step,
  broken: string | undefined,
  left: readonly Step[],
): Step | undefined {
  const isWellAfter = (state: World["truth"], done: Step) => {
    const played = play(state, done);
    return !isHarm(played.consequence) && !played.findings.some(({ rule }) => rule === broken);
  };
  const isSameThing = (it: Step) => it.do === step.do && it.element === step.element && it.at === step.at;
  return left.find((it) => {
    if (isSameThing(it)) return isWellAfter(truth, it);
    const { state } = play(truth, it);
    return state.notDone === undefined && isWellAfter(state, step);
  });
}

/** Steps of the planner's order, or of the answer, that have not been done yet. */
function stepsLeft({ document, log }: Attempt, n: number, { known }: World, plan?: Planner): Step[] {
  const order = plan === undefined ? answerTo(document) : plan(known.document);
  const done: Action[] = log
    .slice(0, n - 1)
    .flatMap(({ action, result }) => (action && result.done ? [action] : []));
  return order.filter(isJobStep).filter((step) => {
    const at = done.findIndex((it) => matches(known.document.system, patternOf(step), it));
    if (at !== -1) done.splice(at, 1);
    return at === -1;
  });
}

const patternOf = ({ do: verb, element, at, phases }: Step) => ({
  do: verb,
  ...(element === undefined || verb === "ground" ? {} : { element }),
  ...(at === undefined ? {} : { at }),
  ...(phases === undefined ? {} : { phases }),
});
