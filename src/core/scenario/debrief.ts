import { type RehearsalFinding, isHarm } from "../procedure";
import { perObject, type Reveal, scenarioOf, type Step, type Trap } from "../document";
import { type Message, say } from "../terms";
import { type Action, isJobStep } from "./actions";
import { type Attempt, secondsOf } from "./attempt";
import { betterStep } from "./better";
import { type FactTrap, type Planner, trapListOf, trapsCaught } from "./checks";
import { whenTrue } from "./conditions";
import type { LogEntry, PredictionResult, LoggedVerdict } from "./log";
import { isRight } from "./prediction";
import { minutesOf, type Score, scoreOf, timeCriteriaOf, isForbidden } from "./scoring";
import { factsOf, truthOf } from "./truth";
import { placesOfFact, revealsOf, withinReach } from "./world";

/** One place on the time line: how the worst work point stood after an entry. */
export interface Moment {
  readonly n: number;
  readonly t: number;
  readonly actor: LogEntry["actor"];
  readonly verb: string;
  readonly object: string;
  readonly done: boolean;
  /** as it truly stood; nothing where no work point is drawn */
  readonly truth: LoggedVerdict | undefined;
  /** as it stood by what was known */
  readonly believed: LoggedVerdict | undefined;
  readonly mark: "danger" | "warning" | "good" | "inject" | "reveal" | "";
}

/** One step that something is to be said of: what was known, what was true, what it did, and what is better. */
export interface Decision {
  readonly entry: number;
  readonly action: Action;
  /** facts known before it */
  readonly knew: readonly string[];
  /** facts that were true and not known before it */
  readonly didNotKnow: readonly string[];
  readonly believed: LoggedVerdict | undefined;
  readonly truth: LoggedVerdict | undefined;
  /** what it did: an arc, a fault, a shock, a reading */
  readonly did: readonly Message[];
  /** rules that it broke, each with its citation */
  readonly findings: readonly RehearsalFinding[];
  /** of these, what nobody could see who knew only what was known */
  readonly unseen: readonly RehearsalFinding[];
  readonly better: Step | undefined;
}

/** A good move, and what it counted for. */
export interface GoodMove {
  readonly entry: number;
  readonly text: string;
}

/** A hidden fact: when it was known, and when it could have been. */
export interface FactReport {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  /** the entry that brought it to light; nothing where nothing did */
  readonly knownAt: number | undefined;
  /** ways by which it comes to light */
  readonly ways: readonly {
    readonly by: Reveal["by"] | "try";
    readonly at: readonly string[];
    readonly element?: string;
  }[];
  /** the first entry with the apprentice where one more look, test or question would have shown it; 0: at any time, by walking there */
  readonly couldBeKnownAt: number;
}

/** A trap of the scenario, and the entry of the log at which it caught the apprentice; nothing where it did not. */
export interface TrapReport {
  readonly trap: Trap | FactTrap;
  readonly entry: number | undefined;
}

/** An inject, and whether it was answered. */
export interface InjectReport {
  readonly id: string;
  readonly label: string;
  readonly entry: number | undefined;
  readonly expected: string;
  readonly note: string;
  readonly answeredAt: number | undefined;
}

/** What is talked about after an attempt, in this order: reactions, what happened, why, what to take away. */
export interface Debrief {
  readonly reactions: {
    readonly questions: readonly Message[];
    readonly remarks: readonly { readonly question: string; readonly text: string }[];
  };
  readonly happened: {
    readonly texts: readonly string[];
    readonly timeLine: readonly Moment[];
    readonly prediction: PredictionResult | undefined;
    /** how often what is live was said after a switching, and how often rightly */
    readonly foreseen: { readonly right: number; readonly of: number };
    readonly injects: readonly InjectReport[];
  };
  readonly why: {
    readonly texts: readonly string[];
    readonly decisions: readonly Decision[];
    readonly good: readonly GoodMove[];
    readonly facts: readonly FactReport[];
    readonly traps: readonly TrapReport[];
  };
  readonly takeAway: {
    readonly texts: readonly string[];
    readonly rules: readonly { readonly rule: string; readonly citation: string; readonly count: number }[];
  };
  readonly score: Score;
  readonly hints: readonly { readonly entry: number; readonly hint: string; readonly strength: string }[];
  readonly seconds: number;
  readonly time: TimeReport;
}

/** How long an attempt took beside the minutes that its scenario allows. Being over them ends nothing. */
export interface TimeReport {
  readonly minutes: number;
  readonly allowed: number;
  /** a clock ran: without one the minutes are the round figures of the steps */
  readonly isMeasured: boolean;
  readonly isOver: boolean;
  /** the first entry after the minutes were over */
  readonly overAt: number | undefined;
  /** whether anything counts for time in this scenario */
  readonly counts: boolean;
}

function timeOf(attempt: Attempt): TimeReport {
  const { document, log } = attempt;
  const allowed = minutesOf(document);
  const isMeasured = log.some(({ at }) => at !== undefined);
  const overAt = log.find(({ at }) => at !== undefined && at > 60 * allowed)?.n;
  return {
    minutes: secondsOf(attempt) / 60,
    allowed,
    isMeasured,
    isOver: overAt !== undefined,
    overAt,
    counts: timeCriteriaOf(document).length > 0,
  };
}

const RANK = { live: 0, "could-go-live": 1, isolated: 2, grounded: 3 } as const;

/** The worst of several work points. */
function worstVerdict(
  verdicts: Readonly<Record<string, LoggedVerdict>> | undefined,
): LoggedVerdict | undefined {
  return Object.values(verdicts ?? {}).sort(
    (a, b) =>
      RANK[a.verdict] - RANK[b.verdict] ||
      (a.margin ?? 4) - (b.margin ?? 4) ||
      b.exposureVolts - a.exposureVolts,
  )[0];
}

/** The time line of an attempt, with margin and exposure after each entry. */
export const timeLineOf: (attempt: Attempt) => readonly Moment[] = perObject((attempt: Attempt) => {
  const good = new Set(goodMovesOf(attempt).map(({ entry }) => entry));
  let truth: LoggedVerdict | undefined;
  let believed: LoggedVerdict | undefined;
  return attempt.log.map((entry): Moment => {
    const { n, t, actor, verb, object, result } = entry;
    truth = worstVerdict(result.workPoints) ?? truth;
    believed = worstVerdict(result.believed) ?? believed;
    return {
      n,
      t,
      actor,
      verb,
      object,
      done: result.done,
      truth,
      believed,
      mark: markOf(entry, good.has(n)),
    };
  });
});

function markOf({ result }: LogEntry, isGood: boolean): Moment["mark"] {
  const { findings = [], consequence, inject, reveals = [] } = result;
  if (isHarm(consequence) || findings.some(({ severity }) => severity === "danger")) return "danger";
  if (findings.some(({ severity }) => severity === "warning")) return "warning";
  if (inject !== undefined) return "inject";
  if (reveals.length > 0) return "reveal";
  return isGood ? "good" : "";
}

/** What counted, but for steps that were also a trap fallen into, or a danger. */
function goodMovesOf(attempt: Attempt): GoodMove[] {
  const { criteria, dangers } = scoreOf(attempt);
  const bad = new Set([...trapsCaught(attempt).values(), ...dangers.map(({ entry }) => entry)]);
  return criteria
    .filter(({ met, entry, criterion }) => met && !isForbidden(criterion) && !bad.has(entry ?? 0))
    .map(({ entry, criterion }) => ({ entry: entry!, text: criterion.text }))
    .sort((a, b) => a.entry - b.entry);
}

/**
 * The debrief of an attempt, from its log.
 *
 * @param plan finds the better step from where the apprentice stood, knowing what was known; without it the scenario's answer does
 */
export function debriefOf(attempt: Attempt, plan?: Planner): Debrief {
  const { document, log } = attempt;
  const scenario = scenarioOf(document);
  const { reactions, happened, why, takeAway } = scenario.debrief ?? {};
  const caught = trapsCaught(attempt);
  const foreseen = log.flatMap(({ result }) => result.foreseen ?? []);
  return {
    reactions: {
      questions: reactions?.map((text) => say("scenario.text", { text })) ?? [
        say("debrief.reaction.feel"),
        say("debrief.reaction.hardest"),
        say("debrief.reaction.surprised"),
      ],
      remarks: log.flatMap(({ action }) =>
        action?.do === "remark" ? [{ question: action.question ?? "", text: action.text }] : [],
      ),
    },
    happened: {
      texts: happened ?? [],
      timeLine: timeLineOf(attempt),
      prediction: log.find(({ result }) => result.prediction !== undefined)?.result.prediction,
      foreseen: { right: foreseen.filter(isRight).length, of: foreseen.length },
      injects: injectReports(attempt),
    },
    why: {
      texts: why ?? [],
      decisions: decisionsOf(attempt, plan),
      good: goodMovesOf(attempt),
      facts: factReports(attempt),
      traps: trapListOf(document).map((trap) => ({ trap, entry: caught.get(trap.id) })),
    },
    takeAway: { texts: takeAway ?? [], rules: rulesBroken(attempt) },
    score: scoreOf(attempt),
    hints: hintsOf(attempt),
    seconds: secondsOf(attempt),
    time: timeOf(attempt),
  };
}

/** Hints that were asked for, each with its entry of the log and how much it gave away. */
export const hintsOf = ({ log }: Attempt) =>
  log.flatMap(({ n, action }) =>
    action?.do === "hint" ? [{ entry: n, hint: action.hint, strength: action.strength }] : [],
  );

/** Rules broken in an attempt, most often first. */
export function rulesBroken({ log }: Attempt): { rule: string; citation: string; count: number }[] {
  const rules = new Map<string, { rule: string; citation: string; count: number }>();
  for (const { result } of log)
    for (const { rule, citation, severity } of result.findings ?? []) {
      if (severity === "note") continue;
      const known = rules.get(rule) ?? { rule, citation, count: 0 };
      rules.set(rule, { ...known, count: known.count + 1 });
    }
  return [...rules.values()].sort((a, b) => b.count - a.count || (a.rule < b.rule ? -1 : 1));
}

function decisionsOf(attempt: Attempt, plan?: Planner): Decision[] {
  const { document, log } = attempt;
  const knew: string[] = [];
  const isTrue = new Set(Object.keys(scenarioOf(document).truth ?? {}));
  return log.flatMap((entry): Decision[] => {
    const { n, action, result } = entry;
    const before = { knew: [...knew], didNotKnow: [...isTrue].filter((id) => !knew.includes(id)) };
    if (result.inject !== undefined) isTrue.add(result.inject);
    knew.push(...(result.reveals ?? []));
    const findings = (result.findings ?? []).filter(({ severity }) => severity !== "note");
    if (action === undefined || (findings.length === 0 && !isHarm(result.consequence))) return [];
    const coached = new Set((result.coached ?? []).map(({ rule, where }) => `${rule} ${where}`));
    const unseen = findings.filter(({ rule, where }) => !coached.has(`${rule} ${where}`));
    return [
      {
        entry: n,
        action,
        ...before,
        believed: worstVerdict(result.believed),
        truth: worstVerdict(result.workPoints),
        did: result.shown,
        findings,
        unseen,
        better: betterStep(attempt, { entry, findings, unseen, didNotKnow: before.didNotKnow }, plan),
      },
    ];
  });
}

function factReports(attempt: Attempt): FactReport[] {
  const { document, log } = attempt;
  return [...factsOf(document)].flatMap(([id, fact]): FactReport[] => {
    const happened = "after" in fact ? log.find(({ result }) => result.inject === id)?.n : 0;
    if (happened === undefined) return [];
    const knownAt = log.find(({ result }) => result.reveals?.includes(id))?.n;
    const reveals = revealsOf(document, id);
    const places = placesOfFact(document, id);
    const isSeized = "seized" in fact && fact.seized !== undefined;
    const ways: FactReport["ways"] = [
      ...reveals.map(({ by, at, element }) => ({
        by,
        at: at === undefined ? [] : [at],
        ...(element === undefined ? {} : { element }),
      })),
      ...(places.length > 0 ? [{ by: "inspect" as const, at: places }] : []),
      ...(isSeized ? [{ by: "try" as const, at: [], element: Object.keys(fact.seized)[0]! }] : []),
    ];
    return [
      {
        id,
        label: fact.label,
        text: "text" in fact ? (fact.text ?? "") : "",
        knownAt,
        ways,
        couldBeKnownAt: firstChance(attempt, happened, ways) ?? happened,
      },
    ];
  });
}

/** The first entry by which the apprentice stood where the fact shows, or had the operator on the radio. */
function firstChance({ document, log }: Attempt, from: number, ways: FactReport["ways"]): number | undefined {
  const { system } = truthOf(document);
  const places = new Set(
    ways.flatMap(({ at }) => at.flatMap((point) => [point, ...withinReach(system, point)])),
  );
  const canAsk = ways.some(({ by }) => by === "ask");
  const RADIO = ["ask", "request-permit", "receive-permit"];
  return log.find(({ n, verb, object, action }) => {
    if (n <= from) return false;
    if (canAsk && RADIO.includes(verb)) return true;
    const at = action !== undefined && isJobStep(action) ? (action.at ?? "") : object;
    return (
      (verb === "go" || verb === "inspect" || verb === "test") && places.has(verb === "go" ? object : at)
    );
  })?.n;
}

function injectReports({ document, log }: Attempt): InjectReport[] {
  return Object.entries(scenarioOf(document).injects ?? {}).map(
    ([id, { label, expected, expects, note }]) => {
      const entry = log.find(({ result }) => result.inject === id)?.n;
      const answered =
        entry === undefined || expects === undefined
          ? undefined
          : whenTrue(expects, document, log.slice(entry));
      return { id, label, entry, expected: expected ?? "", note: note ?? "", answeredAt: answered };
    },
  );
}

/** What the apprentice did, action by action: walks that follow from a step are not listed. */
export const actionsOf = ({ log }: Attempt): { readonly entry: number; readonly action: Action }[] =>
  log.flatMap(({ n, action }) =>
    action === undefined || action.do === "let-pass" ? [] : [{ entry: n, action }],
  );

/** Two attempts side by side from where they first differ. */
export interface AttemptDifference {
  /** actions that both have in common at the beginning */
  readonly common: number;
  readonly first: { readonly entry: number; readonly moments: readonly Moment[]; readonly score: Score };
  readonly second: { readonly entry: number; readonly moments: readonly Moment[]; readonly score: Score };
}

/** Where two attempts at one scenario part: how many actions they have in common, and what each did from there. */
export function compareTwo(first: Attempt, second: Attempt): AttemptDifference {
  const [a, b] = [actionsOf(first), actionsOf(second)];
  let common = 0;
  while (common < a.length && common < b.length && isSame(a[common]!.action, b[common]!.action)) common++;
  const side = (attempt: Attempt, actions: typeof a) => {
    const entry = actions[common]?.entry ?? attempt.log.length + 1;
    return { entry, moments: timeLineOf(attempt).slice(entry - 1), score: scoreOf(attempt) };
  };
  return { common, first: side(first, a), second: side(second, b) };
}

const isSame = (a: Action, b: Action): boolean => JSON.stringify(a) === JSON.stringify(b);
