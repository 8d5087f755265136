import { scenarioOf } from "../document";
import { factsOf, nameOfFact } from "./truth";
import { type Attempt, secondsOf } from "./attempt";
import { trapListOf, trapsCaught } from "./checks";
import { hintsOf, rulesBroken } from "./debrief";
import { bestOf, minutesOf, passMarkOf, scoreOf } from "./scoring";

/** One attempt as a row of a class. */
export interface ClassRow {
  readonly attempt: Attempt;
  readonly who: string;
  readonly outcome: "passed" | "failed" | "unfinished";
  readonly percent: number;
  readonly dangers: number;
  readonly hints: number;
  readonly minutes: number;
  /** minutes that its scenario allows */
  readonly minutesAllowed: number;
  /** points that it needs to pass [% of all], 0 where its scenario names none */
  readonly passMark: number;
  /** whether it went on from the middle of another attempt */
  readonly isFork: boolean;
  /** which variant of the scenario it was; nothing where it was the scenario itself */
  readonly variant: number | undefined;
  /** traps fallen into */
  readonly traps: readonly string[];
  /** hidden facts that came to light */
  readonly facts: readonly string[];
}

/** How many of a class something happened to, and to whom. */
export interface Tally {
  readonly id: string;
  readonly label: string;
  readonly count: number;
  readonly who: readonly string[];
}

/** Many attempts at one scenario, side by side. */
export interface ClassView {
  /** of the scenario: its fingerprint, or the title that its variants go by */
  readonly key: string;
  readonly rows: readonly ClassRow[];
  /** the best attempt of each name that was played from the beginning: trying again never lowers a score, and knowing what comes raises none */
  readonly best: readonly ClassRow[];
  /** how many attempts each trap caught, most first */
  readonly traps: readonly Tally[];
  /** how many found out each hidden fact, fewest first */
  readonly facts: readonly Tally[];
  /** how many missed each thing that counts, most first */
  readonly criteria: readonly Tally[];
  readonly rules: readonly Tally[];
  readonly passed: number;
}

const isFinished = ({ log }: Attempt): boolean => log.some(({ verb }) => verb === "finish");

/** An attempt as a row of its class: its outcome, points, hints, minutes and what caught it. */
export function rowOf(attempt: Attempt): ClassRow {
  const { passed, percent, dangers } = scoreOf(attempt);
  return {
    attempt,
    who: attempt.who,
    outcome: passed ? "passed" : isFinished(attempt) || dangers.length > 0 ? "failed" : "unfinished",
    percent,
    dangers: dangers.length,
    hints: hintsOf(attempt).length,
    minutes: secondsOf(attempt) / 60,
    minutesAllowed: minutesOf(attempt.document),
    passMark: passMarkOf(attempt.document),
    isFork: attempt.forkOf !== undefined,
    variant: scenarioOf(attempt.document).variant?.number,
    traps: [...trapsCaught(attempt).keys()],
    facts: [...new Set(attempt.log.flatMap(({ result }) => result.reveals ?? []))],
  };
}

/** Compares attempts, scenario by scenario: each entry of the answer is one scenario. */
export function compareMany(attempts: readonly Attempt[]): ClassView[] {
  const byScenario = new Map<string, Attempt[]>();
  const varied = new Set(attempts.flatMap(({ document }) => scenarioOf(document).variant?.of ?? []));
  // Variants are one scenario, and so is what they were made of.
  const keyOf = ({ document, fingerprint }: Attempt): string => {
    const of = scenarioOf(document).variant?.of ?? document.title;
    return varied.has(of) ? of : fingerprint;
  };
  for (const attempt of attempts) {
    const key = keyOf(attempt);
    byScenario.set(key, [...(byScenario.get(key) ?? []), attempt]);
  }
  return [...byScenario].map(([key, same]) => classOf(key, same));
}

function classOf(key: string, attempts: readonly Attempt[]): ClassView {
  const { document } = attempts[0]!;
  const rows = attempts.map(rowOf);
  const names = [...new Set(attempts.map(({ who }) => who))];
  const tally = (id: string, label: string, is: (row: ClassRow) => boolean): Tally => {
    const caught = rows.filter(is);
    return { id, label, count: caught.length, who: caught.map(({ who }) => who) };
  };
  const most = (tallies: Tally[]) => tallies.sort((a, b) => b.count - a.count);
  const rules = new Map(rows.map((row) => [row, new Set(rulesBroken(row.attempt).map(({ rule }) => rule))]));
  const ruleIds = new Set([...rules.values()].flatMap((it) => [...it]));
  return {
    key,
    rows,
    best: names.map((who) => {
      const own = attempts.filter((it) => it.who === who);
      const whole = own.filter(({ forkOf }) => forkOf === undefined);
      const best = bestOf(whole.length === 0 ? own : whole)!;
      return rows.find(({ attempt }) => attempt === best)!;
    }),
    traps: most(
      trapListOf(document).map(({ id, label }) => tally(id, label, ({ traps }) => traps.includes(id))),
    ),
    facts: most(
      [...factsOf(document).keys()].map((id) =>
        tally(id, nameOfFact(document, id), ({ facts }) => facts.includes(id)),
      ),
    ).reverse(),
    criteria: most(
      scoreOf(attempts[0]!).criteria.map(({ criterion: { id, text } }) =>
        tally(id, text, ({ attempt }) =>
          scoreOf(attempt).criteria.some((it) => it.criterion.id === id && !it.met),
        ),
      ),
    ),
    rules: most([...ruleIds].map((rule) => tally(rule, rule, (row) => rules.get(row)!.has(rule)))),
    passed: rows.filter(({ outcome }) => outcome === "passed").length,
  };
}
