import { expect, test } from "vitest";
import { generateTap, LEVELS, type Step, type StillhotDocument } from "../../src/core";
import { beginJob, findingsAtEnd, plan, visitsOf } from "../../src/core/procedure";
import { playing } from "../../src/core/procedure/planner/playing";
import { customersOutIn } from "../../src/core/procedure/rehearsal/customers";
import { files, scenarioFile } from "../scenarios/library";
import { demoDrawings } from "../support/demoDrawings";
import { brokenMoreThanMayBe } from "../support/plansJudged";
import { randomJob } from "../support/randomJobs";
import { sampled } from "../support/long";

// An order is told by visits, and nobody is sent to and fro without need: where two visits to one structure could be one,
// the rules find something in the order that has them as one, or more customers are out, or a device breaks more than it
// may, or hands come to something before all of the job is proven dead and grounded.

const LIBRARY: readonly (readonly [string, StillhotDocument])[] = [
  ...demoDrawings(),
  ...files.map((id): [string, StillhotDocument] => [`${id}.stillhot.json`, scenarioFile(id)]),
];

/** A few of the seeds; ten of each level and forty jobs were run outside the suite. */
const GENERATED = LEVELS.flatMap((level) =>
  [3, 5].map((seed): [string, StillhotDocument] => [
    `level ${level} seed ${seed}`,
    generateTap({ level, seed }),
  ]),
);

const RANDOM = [12, 18, 31, 37, 40].map((seed): [string, StillhotDocument] => [
  `random job ${seed}`,
  randomJob(seed),
]);

test.each([...LIBRARY, ...sampled(GENERATED, 2), ...RANDOM])(
  "P16 the plan of %s has no needless walk back and forth",
  (_name, document) => {
    const steps = plan(document, { alternatives: false }).steps.map(({ why: _why, ...step }): Step => step);
    expect(needlessWalks(document, steps)).toEqual([]);
  },
);

/** Orders with two visits to one structure made one that are as good as the order itself. */
function needlessWalks(document: StillhotDocument, steps: readonly Step[]): string[] {
  const visits = visitsOf(document, steps).map((it) => ({
    ...it,
    does: it.steps.map((n) => steps[n - 1]!),
  }));
  const guards = new Set(
    steps.slice(
      0,
      steps.findIndex((it) => it.do === "brief"),
    ),
  );
  const told = price(document, steps);
  return visits.flatMap((late, j) => {
    const i = visits.slice(0, j).findLastIndex((it) => it.structure === late.structure);
    if (i === -1) return [];
    const [before, early, between, after] = [
      visits.slice(0, i),
      visits[i]!,
      visits.slice(i + 1, j),
      visits.slice(j + 1),
    ];
    return [
      [...before, early, late, ...between, ...after],
      [...before, ...between, early, late, ...after],
    ]
      .map((order) => order.flatMap(({ does }) => does))
      .filter((order) => isInStages(order, guards) && isNoWorse(price(document, order), told))
      .map((order) => order.map((it) => [it.do, it.element ?? it.at].join(" ")).join("; "));
  });
}

/**
 * Parts of a job that nobody changes round for a shorter way: who comes near is kept off a wire that is down before anything
 * else, nothing is closed before the work is cut off and tagged, nobody's hands come to anything before all of it is
 * proven dead and grounded, and no ground comes off before the last is clear.
 */
function isInStages(order: readonly Step[], guards: ReadonlySet<Step>): boolean {
  const [first, last] = [order.findIndex(isWork), order.findLastIndex(isWork)];
  const stages = order.map((it, n) => (n > last ? after(it) : n < first ? before(it, guards.has(it)) : 5));
  return stages.filter((it) => it !== undefined).every((it, n, all) => n === 0 || it >= all[n - 1]!);
}

const isWork = (it: Step): boolean => it.do === "work";

const before = ({ do: verb }: Step, isGuard: boolean): number | undefined => {
  if (isGuard || verb === "brief") return isGuard ? 0 : 1;
  if (["open", "lift", "pull", "stop", "tag", "block"].includes(verb)) return 2;
  if (["close", "attach"].includes(verb)) return 3;
  return ["test", "ground"].includes(verb) ? 4 : undefined;
};

const after = ({ do: verb }: Step): number | undefined =>
  verb === "unground" ? 6 : ["open", "close", "attach", "untag"].includes(verb) ? 7 : undefined;

/** What an order costs, each number the less the better. */
function price(document: StillhotDocument, steps: readonly Step[]): readonly number[] {
  const begin = beginJob(document);
  const played = [...playing(document, steps)];
  const found = [
    ...played.flatMap(({ findings }) => findings),
    ...findingsAtEnd(played.at(-1)?.state ?? begin),
  ];
  const { during, worst, steps: all } = customersOutIn({ begin, steps: played });
  return [
    ...["danger", "warning", "note"].map((it) => found.filter(({ severity }) => severity === it).length),
    during,
    worst,
    all,
    brokenMoreThanMayBe(begin, played).length,
  ];
}

const isNoWorse = (a: readonly number[], b: readonly number[]): boolean => a.every((it, n) => it <= b[n]!);
