import { describe, expect, test } from "vitest";
import { generateTap, LEVELS } from "../../src/core";
import { jobOf, type StillhotDocument } from "../../src/core/document";
import { type Plan, plan, rehearse } from "../../src/core/procedure";
import { elementsOf } from "../../src/core/procedure/job/names";
import { randomJob } from "../support/randomJobs";
import {
  brokenMoreThanMayBe,
  customersLeftDark,
  energizedBroken,
  machinesStarted,
  phasesMissing,
  untrueReasons,
} from "../support/plansJudged";

/**
 * A few of the seeds, six hundred of which were run outside the suite, and those that failed once: a reason about one phase of
 * a switch, a charge that the rest was closed onto, a bank that the tie brought two phases to, covers that other openings had asked for.
 */
const SEEDS = [...Array.from({ length: 20 }, (_, index) => index + 1), 1078, 1133, 1159, 2002, 2152];

/** Seeds of the taps to practise on, at each level. */
const PRACTICE_SEEDS = [1, 2];

interface PlannedJob {
  readonly name: string;
  readonly document: StillhotDocument;
  readonly plan: Plan;
  /** the drawing with the order as its job's */
  readonly withOrder: StillhotDocument;
}

const DRAWINGS: readonly (readonly [name: string, document: StillhotDocument])[] = [
  ...SEEDS.map((seed) => [`seed ${seed}`, randomJob(seed)] as const),
  ...LEVELS.flatMap((level) =>
    PRACTICE_SEEDS.map(
      (seed) => [`level ${level}, seed ${seed}`, generateTap({ level, seed, language: "en" })] as const,
    ),
  ),
];

const jobs = DRAWINGS.map(([name, document]): PlannedJob => {
  const planned = plan(document, { alternatives: false });
  const steps = planned.steps.map(({ why: _why, ...step }) => step);
  const withOrder = { ...document, job: { ...jobOf(document), steps } as never };
  return { name, document, plan: planned, withOrder };
});
const ordered = jobs.filter(({ plan: { steps } }) => steps.length > 0);

/** Every job's order, played from as found; what is wrong with it, with the name of the job before it. */
function wrongIn(
  judge: (it: PlannedJob, played: ReturnType<typeof rehearse>) => readonly string[],
): string[] {
  return ordered.flatMap((it) => {
    // One drawing for all laws: a rehearsal is remembered for each.
    return judge(it, rehearse(it.withOrder)).map((problem) => `${it.name}: ${problem}`);
  });
}

describe("random jobs have banks, ties, machines, parallel secondaries, regulators and capacitors", () => {
  test("each among a hundred of them", () => {
    const kinds = new Set(
      Array.from({ length: 100 }, (_, seed) =>
        elementsOf(randomJob(seed).system).map(([, it]) => it.kind),
      ).flat(),
    );
    for (const kind of ["transformer", "regulator", "capacitor", "generator", "recloser", "fault", "clamp"])
      expect([...kinds]).toContain(kind);
  });
});

describe("P1 a planned order rehearses without a danger or a warning", () => {
  test("in each job", () => {
    expect(ordered.length).toBeGreaterThan((DRAWINGS.length * 3) / 4);
    const found = wrongIn((_, { steps, findings }) =>
      [...steps.flatMap((it) => it.findings.map((finding) => ({ n: it.n, ...finding }))), ...findings]
        .filter(({ severity }) => severity !== "note")
        .map(({ rule, where }) => `${rule} ${where}`),
    );
    expect(found).toEqual([]);
  });
});

describe("P12 no plan energizes what is broken, leaves a bank with a phase missing, or starts a machine", () => {
  test("a parted conductor, or a fault that is not cleared", () => {
    expect(wrongIn((_, { steps, begin }) => energizedBroken(begin, steps))).toEqual([]);
  });
  test("a bank, at the end and whenever something else is done meanwhile", () => {
    expect(wrongIn((_, { steps, begin }) => phasesMissing(begin, steps))).toEqual([]);
  });
  test("a customer's machine", () => {
    expect(wrongIn((_, { steps, begin }) => machinesStarted(begin, steps))).toEqual([]);
  });
});

describe("P13 no plan leaves a customer dark who can be supplied", () => {
  test("one thing more, closed, would supply nobody without harm", () => {
    expect(wrongIn(({ document }, { steps }) => customersLeftDark(document, steps.at(-1)!.state))).toEqual(
      [],
    );
  });
});

describe("P14 no plan breaks more than a device may", () => {
  test("by the currents of the drawing before each opening", () => {
    expect(wrongIn((_, { steps, begin }) => brokenMoreThanMayBe(begin, steps))).toEqual([]);
  });
});

describe("P15 every reason in a plan is true of the state that it speaks of", () => {
  test("step by step", () => {
    expect(wrongIn(({ plan: { steps: planned } }, played) => untrueReasons(planned, played))).toEqual([]);
  });
});
