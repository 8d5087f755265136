import { describe, expect, test } from "vitest";
import type { WorkPointReport } from "../../core";
import type { Session } from "./session.svelte";
import { verdictWords } from "./verdict";

const shown = (report: Partial<WorkPointReport>) =>
  verdictWords({
    document: { title: "", system: { points: { p1: { x: 0, y: 0 } }, elements: {} } },
    workPoint: {
      id: "w1",
      at: "p1",
      report: { verdict: "isolated", margin: null, threats: [], assumptions: 0, ...report },
    },
    isStale: false,
    failed: undefined,
  } as unknown as Session).facts;

describe("What stands beside the verdict", () => {
  test.each<[string, Partial<WorkPointReport>, string[]]>([
    ["all ways looked for", {}, ["Margin above 3"]],
    ["all up to one", { margin: 2, threatsCompleteTo: 1 }, ["Margin 2", "Not all ways were looked for"]],
    ["all up to two", { margin: 3, threatsCompleteTo: 2 }, ["Margin 3", "Not all ways were looked for"]],
    [
      "and things not seen",
      { margin: 1, threatsCompleteTo: 2, assumptions: 1 },
      ["Margin 1", "Not all ways were looked for", "1 thing taken from the map or assumed"],
    ],
  ])("%s", (_, report, facts) => expect(shown(report)).toEqual(facts));
});
