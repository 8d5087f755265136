import {
  type Condition,
  isSameStructure,
  scenarioOf,
  type StepPattern,
  type StillhotDocument,
  type System,
} from "../document";
import { takesStructure } from "../steps";
import { type Action, isJobStep } from "./actions";
import type { LogEntry } from "./log";
import { isRight } from "./prediction";
import { truthOf } from "./truth";

/**
 * Whether an action is the one that is meant: a step that names no phases is about all of them, and who walks somewhere or
 * looks there does it at the whole structure.
 */
export function matches(system: System, pattern: StepPattern, action: Action): boolean {
  const { phases, ...same } = pattern;
  const own = action as unknown as Readonly<Record<string, unknown>>;
  const isOfStructure = isJobStep(action) ? takesStructure(action.do) : action.do === "go";
  const isThere = (at: unknown) =>
    isOfStructure && [at, own["at"]].every((it) => typeof it === "string")
      ? isSameStructure(system, at as string, own["at"] as string)
      : false;
  if (Object.entries(same).some(([key, value]) => own[key] !== value && !(key === "at" && isThere(value))))
    return false;
  const given = typeof own["phases"] === "string" ? own["phases"] : "";
  return phases === undefined || given === "" || [...phases].every((it) => given.includes(it));
}

const isStep = (system: System, { action, result }: LogEntry, pattern: StepPattern): boolean =>
  action !== undefined && result.done && matches(system, pattern, action);

const firstWhere = (log: readonly LogEntry[], is: (entry: LogEntry) => boolean): number | undefined =>
  log.find(is)?.n;

/**
 * The number of the entry by which a sentence about an attempt came true; nothing where it is not true.
 *
 * @param log of the attempt, from its beginning; a part of it from the beginning answers for that moment
 */
export function whenTrue(
  condition: Condition,
  document: StillhotDocument,
  log: readonly LogEntry[],
): number | undefined {
  const { before, after } = condition;
  const { system } = truthOf(document);
  const limit = before === undefined ? undefined : firstWhere(log, (it) => isStep(system, it, before));
  const start = after === undefined ? 0 : firstWhere(log, (it) => isStep(system, it, after));
  if (start === undefined) return undefined;
  const isBetween = ({ n }: LogEntry) => n > start && (limit === undefined || n < limit);
  const first = (is: (entry: LogEntry) => boolean) => firstWhere(log, (it) => isBetween(it) && is(it));

  if (condition.step !== undefined) return first((it) => isStep(system, it, condition.step!));
  if (condition.tries !== undefined)
    return first(({ action }) => action !== undefined && matches(system, condition.tries!, action));
  if (condition.rule !== undefined)
    return first(
      ({ result }) =>
        result.findings?.some(
          ({ rule, where, severity }) =>
            rule === condition.rule &&
            severity !== "note" &&
            (condition.where === undefined || where === condition.where),
        ) === true,
    );
  if (condition.knows !== undefined)
    return first(({ result }) => result.reveals?.includes(condition.knows!) === true);
  if (condition.consequence !== undefined)
    return first(({ result }) => result.consequence?.kind === condition.consequence);
  if (condition.verdict !== undefined)
    return first(
      ({ action, result }) =>
        action?.do === "work" &&
        (condition.workPoint === undefined || action.at === condition.workPoint) &&
        result.workPoints?.[action.at]?.verdict === condition.verdict,
    );
  if (condition.restored !== undefined) return first(({ result }) => result.restored === condition.restored);
  if (condition.predicted !== undefined)
    return first(({ result: { prediction } }) => prediction !== undefined && isRight(prediction));
  if (condition.finishedWithin !== undefined)
    return first(({ verb, at }) => verb === "finish" && (at ?? 0) <= 60 * condition.finishedWithin!);
  if (condition.answered !== undefined) return whenAnswered(condition.answered, document, log);
  return whenAllOf(condition, document, log);
}

/** The expected response to something that happened, given after it happened. */
function whenAnswered(id: string, document: StillhotDocument, log: readonly LogEntry[]): number | undefined {
  const happened = firstWhere(log, ({ result }) => result.inject === id);
  const expects = scenarioOf(document).injects?.[id]?.expects;
  if (happened === undefined || expects === undefined) return undefined;
  return whenTrue(expects, document, log.slice(happened));
}

function whenAllOf(
  { any, all, not }: Condition,
  document: StillhotDocument,
  log: readonly LogEntry[],
): number | undefined {
  const whenEach = (them: readonly Condition[]) => them.map((it) => whenTrue(it, document, log));
  if (any !== undefined) {
    const times = whenEach(any).filter((it) => it !== undefined);
    return times.length === 0 ? undefined : Math.min(...times);
  }
  if (all !== undefined) {
    const times = whenEach(all.filter((it) => it.not === undefined));
    if (times.includes(undefined)) return undefined;
    const time = times.length === 0 ? (log.at(-1)?.n ?? 0) : Math.max(...(times as number[]));
    // What must not be true must not have been true by then.
    const until = log.filter(({ n }) => n <= time);
    const isSpoilt = all.some(
      (it) => it.not !== undefined && whenTrue(it.not, document, until) !== undefined,
    );
    return isSpoilt ? undefined : time;
  }
  if (not !== undefined) return whenTrue(not, document, log) === undefined ? (log.at(-1)?.n ?? 0) : undefined;
  return undefined;
}
