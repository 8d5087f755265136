import { describe, expect, test } from "vitest";
import { scenarioFile } from "../../../../tests/scenarios/library";
import { scenarioOf } from "../../document";
import { lessonOf, reasonFor } from "./lesson";
import { FIRST_LESSON } from "./path";

const scenario = scenarioFile(FIRST_LESSON);
const { answer = [] } = scenarioOf(scenario);

test("the lesson plays the whole answer, and breaks no rule by it", () => {
  const lesson = lessonOf(scenario);
  expect(lesson.steps.map(({ step }) => step.do)).toEqual(answer.map((it) => it.do));
  const broken = [...lesson.steps.flatMap(({ findings }) => findings), ...lesson.findings];
  expect(broken.filter(({ severity }) => severity !== "note")).toEqual([]);
});

/** Why each step stands there: the rule that is broken without it. The paragraphs are those that the rules cite. */
describe("the reason of a step is what goes wrong without it", () => {
  test.each([
    ["inspect", 0, undefined],
    ["brief", 1, "brief-first"],
    ["open", 3, "load-break"],
    ["check-detector", 8, "detector-check"],
    ["test", 9, "test-before-ground"],
    ["ground", 14, "secondary-backfeed"],
    ["cover", 16, "approach-distance"],
    ["all-clear", 18, "clear-before-ungrounding"],
    ["unground", 22, "grounds-left"],
    ["confirm", 24, "all-clear-first"],
    ["untag", 28, "tagged-operated"],
    ["stand-clear", 29, "stand-clear"],
  ])("%s, step %d: %s", (verb, at, rule) => {
    expect(answer[at]?.do).toBe(verb);
    expect(reasonFor(scenario, at)?.rule).toBe(rule);
  });
});
