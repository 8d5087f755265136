import { type Condition, type Criterion, perObject, scenarioOf, type StillhotDocument } from "../document";
import { type Message, say } from "../terms";
import type { Attempt } from "./attempt";
import { whenTrue } from "./conditions";
import type { LogEntry } from "./log";
import { isHit } from "../procedure";

/** What counts where a scenario says nothing: the work done on grounded conductors, nobody hurt, the line in service. */
function defaultCriteria(document: StillhotDocument): Criterion[] {
  const workPoints = Object.keys((document.job?.["workPoints"] ?? {}) as object);
  return [
    ...workPoints.map((workPoint): Criterion => ({
      id: `work-${workPoint}`,
      kind: "must",
      text: `The work at ${workPoint} is done, and done while it is grounded.`,
      when: { verdict: "grounded", workPoint },
      weight: 40,
    })),
    {
      id: "nobody-hurt",
      kind: "never",
      text: "Nothing arcs, faults or shocks anyone.",
      when: { any: [{ consequence: "arc" }, { consequence: "fault" }, { consequence: "shock" }] },
      weight: 30,
      severity: "danger",
    },
    {
      id: "as-found",
      kind: "must",
      text: "The line is in service at the end.",
      when: { restored: true },
      weight: 20,
    },
  ];
}

/** What counts in a scenario: its own criteria, or those that hold for any job. */
export const criteriaOf: (document: StillhotDocument) => readonly Criterion[] = perObject(
  (document: StillhotDocument) => scenarioOf(document).criteria ?? defaultCriteria(document),
);

/** How something that counts was missed: it was never done, done too late, done though it never may be, or not brought to an end. */
export type Missing = "undone" | "late" | "happened" | "unfinished";

/** How a criterion was missed, and the entry that says so; nothing where it was met. */
export function missedHow(
  { document, log }: Attempt,
  { criterion, met, entry }: CriterionResult,
): { readonly how: Missing; readonly entry?: number } | undefined {
  if (met) return undefined;
  if (isForbidden(criterion)) return entry === undefined ? { how: "unfinished" } : { how: "happened", entry };
  if (entry !== undefined) return { how: "unfinished" };
  const { when } = criterion;
  const { before: _before, ...whenever } = when;
  const late = when.before === undefined ? undefined : whenTrue(whenever, document, log);
  return late === undefined ? { how: "undone" } : { how: "late", entry: late };
}

/** Minutes that a scenario allows; nothing happens when they are over. */
export const minutesOf = (document: StillhotDocument): number => scenarioOf(document).minutes ?? 30;

/** Points that an attempt needs to pass, besides what must and may never be [% of all]; 0 where the scenario names none. */
export const passMarkOf = (document: StillhotDocument): number => scenarioOf(document).passMark ?? 0;

const asksForTime = ({ finishedWithin, any = [], all = [], not }: Condition): boolean =>
  finishedWithin !== undefined || [...any, ...all, ...(not === undefined ? [] : [not])].some(asksForTime);

/** What counts for being done in time; nothing in most scenarios. */
export const timeCriteriaOf = (document: StillhotDocument): readonly Criterion[] =>
  criteriaOf(document).filter(({ when }) => asksForTime(when));

/** One thing that counts, and how it went. */
export interface CriterionResult {
  readonly criterion: Criterion;
  readonly met: boolean;
  /** the entry that met it, or broke it */
  readonly entry?: number;
  readonly earned: number;
  readonly weight: number;
}

/** What of an objective's points was earned. */
export interface ObjectiveResult {
  readonly id: string;
  readonly text: string;
  readonly earned: number;
  readonly of: number;
  readonly met: boolean;
}

/** The points of an attempt, whether it passed, and what they are made of. */
export interface Score {
  readonly earned: number;
  readonly of: number;
  /** 0 to 100, whole */
  readonly percent: number;
  /** no danger, every must done, nothing done that may never be, the pass mark reached, and the attempt finished */
  readonly passed: boolean;
  /** what fails the attempt whatever the points say, in the order in which it happened */
  readonly dangers: readonly { readonly entry: number; readonly why: Message }[];
  readonly criteria: readonly CriterionResult[];
  readonly objectives: readonly ObjectiveResult[];
}

/** Whether a criterion is of what may never happen. */
export const isForbidden = ({ kind }: Pick<Criterion, "kind">): boolean => kind === "never";

/** Whether a criterion is good to meet, and not needed. */
const isExtra = ({ kind }: Criterion): boolean => kind === "good";

const isDangerous = (it: Criterion): boolean => isForbidden(it) && it.severity === "danger";

/** Why the last entry of a log fails the attempt at once: a rule of severity danger, a shock, a fault, what may never be. */
export function dangersOf(document: StillhotDocument, log: readonly LogEntry[]): Message[] {
  const last = log.at(-1);
  if (last === undefined) return [];
  const never = criteriaOf(document)
    .filter((it) => isDangerous(it) && whenTrue(it.when, document, log) === last.n)
    .map(({ text }) => say("scenario.text", { text }));
  return [...dangersInEntry(last), ...never];
}

/** Scores an attempt by its log alone. */
export const scoreOf: (attempt: Attempt) => Score = perObject((attempt: Attempt): Score => {
  const { document, log } = attempt;
  const end = log.find(({ verb }) => verb === "finish")?.n;
  const isFinished = end !== undefined;
  // Whoever says at once that the job is done has kept nothing: what holds only at the end counts for the work before it.
  const hasWorked = isWorkDone(document, log);
  const criteria = criteriaOf(document).map((criterion): CriterionResult => {
    const { when, weight = 1 } = criterion;
    const entry = whenTrue(when, document, log);
    // What may never happen counts as kept only by somebody who came to the end.
    const met = isForbidden(criterion)
      ? entry === undefined && isFinished && hasWorked
      : entry !== undefined && (hasWorked || entry !== end);
    return { criterion, met, ...(entry === undefined ? {} : { entry }), earned: met ? weight : 0, weight };
  });
  const dangers = log.flatMap((entry) => dangersInEntry(entry).map((why) => ({ entry: entry.n, why })));
  for (const { criterion, entry } of criteria)
    if (isDangerous(criterion) && entry !== undefined && !dangers.some((it) => it.entry === entry))
      dangers.push({ entry, why: say("scenario.text", { text: criterion.text }) });
  dangers.sort((a, b) => a.entry - b.entry);
  const sum = (them: readonly CriterionResult[], key: "earned" | "weight") =>
    them.reduce((total, it) => total + it[key], 0);
  const earned = sum(criteria, "earned");
  const of = sum(criteria, "weight");
  const needed = criteria.filter(({ criterion }) => !isExtra(criterion));
  const isEnough = 100 * earned >= passMarkOf(document) * of;
  return {
    earned,
    of,
    percent: of === 0 ? 0 : Math.round((100 * earned) / of),
    passed: isFinished && dangers.length === 0 && isEnough && needed.every(({ met }) => met),
    dangers,
    criteria,
    objectives: (scenarioOf(document).objectives ?? []).map(({ id, text }): ObjectiveResult => {
      const own = criteria.filter(({ criterion }) => criterion.objective === id);
      const weight = sum(own, "weight");
      const got = sum(own, "earned");
      return { id, text, earned: got, of: weight, met: weight > 0 && got === weight };
    }),
  };
});

/** Whether there was any work, where the job has a place for it. */
const isWorkDone = ({ job }: StillhotDocument, log: readonly LogEntry[]): boolean =>
  Object.keys((job?.["workPoints"] ?? {}) as object).length === 0 ||
  log.some(({ action, result }) => action?.do === "work" && result.done);

/** One for each rule: a fault that lifts ten neutrals is one mistake. */
function dangersInEntry({ result: { findings = [], consequence } }: LogEntry): Message[] {
  const rules = new Map<string, Message>();
  for (const { rule, severity, message } of findings)
    if (severity === "danger" && !rules.has(rule)) rules.set(rule, message);
  return [...rules.values(), ...(isHit(consequence) ? [consequence!.text] : [])];
}

/** The best of several attempts by one person: trying again never lowers a score. */
export function bestOf(attempts: readonly Attempt[]): Attempt | undefined {
  const rank = (attempt: Attempt) => {
    const { passed, percent } = scoreOf(attempt);
    return (passed ? 1000 : 0) + percent;
  };
  return [...attempts].sort((a, b) => rank(b) - rank(a))[0];
}
