import fc from "fast-check";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import scenarios from "../../../../shared/scenarios/index.json";
import "../../../../tests/support/oneSeed";
import { isRefusal } from "../../terms";
import { drillQuestion } from "../drill/drill";
import { boxAfter } from "./boxes";
import { mergedTried, readLearner, type Tried, writeLearner } from "./learner";
import { pathItems, pathOn } from "./path";
import { TASKS } from "./tasks";

/** Answers as `day +` right, `day -` wrong, days of March 2026. */
const answers = (text: string) =>
  text
    .split("; ")
    .filter(Boolean)
    .map((it) => ({ day: `2026-03-${it.split(" ")[0]!.padStart(2, "0")}`, right: it.endsWith("+") }));

/** Leitner's rule: known goes on to the next box, missed goes back to the first; a day, three, a week. */
describe("what was missed comes back after a day, three, a week", () => {
  test.each([
    ["never missed, it is in no box", "1 +; 2 +", undefined],
    ["missed, it is due the day after", "1 -", [0, "2026-03-02"]],
    ["right on its day, it is due three days later", "1 -; 2 +", [1, "2026-03-05"]],
    ["right again, a week later", "1 -; 2 +; 5 +", [2, "2026-03-12"]],
    ["right a third time, it is learnt", "1 -; 2 +; 5 +; 12 +", undefined],
    ["right before its day, it stays where it is", "1 -; 1 +", [0, "2026-03-02"]],
    ["right later than its day, it goes on from that day", "1 -; 9 +", [1, "2026-03-12"]],
    ["missed in the last box, it begins anew", "1 -; 2 +; 5 +; 12 -", [0, "2026-03-13"]],
    ["missed over the end of a month", "31 -", [0, "2026-04-01"]],
  ] as const)("%s", (_, given, expected) => {
    const at = boxAfter(answers(given));
    expect(at === undefined ? undefined : [at.box, at.due]).toEqual(expected);
  });
});

const aTry = fc.record({
  id: fc.stringMatching(/^[a-f]{1,2}$/),
  at: fc.constantFrom("2026-03-01T08:00:00Z", "2026-03-02T08:00:00Z"),
  day: fc.constantFrom("2026-03-01", "2026-03-02"),
  item: fc.constantFrom("drill/live/1", "scenario/first-cutout"),
  right: fc.boolean(),
  share: fc.constantFrom(0, 0.5, 1),
});
const tries = fc.array(aTry, { maxLength: 12 });

describe("two records become one", () => {
  test("nothing is lost, and neither the order nor a second time matters", () => {
    fc.assert(
      fc.property(tries, tries, tries, (one, other, third) => {
        const both = mergedTried(one, other);
        expect(new Set(both.map(({ id }) => id))).toEqual(new Set([...one, ...other].map(({ id }) => id)));
        expect(mergedTried(other, one)).toEqual(both);
        expect(mergedTried(both, other)).toEqual(both);
        expect(mergedTried(mergedTried(one, other), third)).toEqual(
          mergedTried(one, mergedTried(other, third)),
        );
      }),
    );
  });

  test("a file gives back what was written", () => {
    fc.assert(
      fc.property(tries, (list) => {
        expect(readLearner(writeLearner(list))).toEqual(mergedTried(list));
      }),
    );
  });

  const entry = { id: "a", at: "x", day: "2026-03-01", item: "y", right: true, share: 1 };
  const withEntry = (spoiled: object) =>
    JSON.stringify({ format: "stillhot-learner", formatVersion: 1, tried: [{ ...entry, ...spoiled }] });
  test.each([
    ["no JSON", "{"],
    ["a drawing", JSON.stringify({ format: "stillhot", formatVersion: 1 })],
    ["a newer version", JSON.stringify({ format: "stillhot-learner", formatVersion: 2, tried: [] })],
    ["a day that is none", withEntry({ day: "2026-02-30" })],
    ["more than all", withEntry({ share: 1.5 })],
    ["no item", withEntry({ item: "" })],
    ["a share of a task that is none", withEntry({ shares: { tools: 7 } })],
  ])("%s is refused", (_, text) => {
    expect(isRefusal(readLearner(text) as object)).toBe(true);
  });
});

const done = (day: string, item: string, right: boolean, share = right ? 1 : 0): Tried => ({
  id: `${day} ${item}`,
  at: `${day}T10:00:00Z`,
  day,
  item,
  right,
  share,
});

describe("the path", () => {
  test("begins with the lesson, goes on level by level, and offers what was missed on its day", () => {
    const begin = pathOn("2026-03-01", [], scenarios);
    expect(begin.next?.name).toBe("lesson/first-cutout");
    expect(begin.due).toEqual([]);
    const after = [
      done("2026-03-01", "lesson/first-cutout", true),
      done("2026-03-01", "drill/live/1", false),
    ];
    const same = pathOn("2026-03-01", after, scenarios);
    expect(same.due).toEqual([]);
    expect(same.waiting.map(({ item }) => item.name)).toEqual(["drill/live/1"]);
    const tomorrow = pathOn("2026-03-02", after, scenarios);
    expect(tomorrow.due.map(({ name }) => name)).toEqual(["drill/live/1"]);
    expect(tomorrow.next?.name).toBe("drill/live/1");
  });

  test("a task knows what is done of it, and its best by what counted for it", () => {
    const tried = [
      done("2026-03-01", "drill/look/2", true),
      { ...done("2026-03-01", "scenario/orchard-close", false, 0.2), shares: { identify: 0.7 } },
    ];
    const { tasks } = pathOn("2026-03-01", tried, scenarios);
    const identify = tasks.find(({ task }) => task === "identify")!;
    expect([identify.done, identify.best]).toEqual([1, 1]);
    const backfeed = tasks.find(({ task }) => task === "backfeed")!;
    expect([backfeed.done, backfeed.best]).toEqual([0, 0.2]);
  });

  test("its tasks are those of the page on coverage, and something is to be done for each", () => {
    const page = readFileSync("docs/training-coverage.md", "utf8");
    expect(TASKS).toEqual([...page.matchAll(/^\| `([\w-]+)` \|/gm)].map(([, key]) => key));
    for (const task of TASKS)
      expect(
        pathItems(scenarios).some((it) => it.tasks.includes(task)),
        task,
      ).toBe(true);
  });

  test.each([1, 2] as const)(
    "every kind of question that it asks at level %d is there within a few seeds",
    (level) => {
      const asked = pathItems(scenarios).flatMap((it) =>
        it.of === "drill" && it.level === level ? [it.kind] : [],
      );
      expect(asked.length).toBeGreaterThan(6);
      for (const kind of asked)
        expect(
          [5, 6, 7].some((seed) => drillQuestion({ seed, level, kinds: [kind] }, 0)?.kind === kind),
          kind,
        ).toBe(true);
    },
  );
});
