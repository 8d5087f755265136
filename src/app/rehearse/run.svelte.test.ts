// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { workersAnswerByHand } from "../../../tests/support/answeringWorker";
import { draw } from "../../../tests/support/jobNotation";
import type { JobLogLine, PointId, StillhotDocument } from "../../core";
import type { Session } from "../session/session.svelte";
import { Run } from "./run.svelte";

workersAnswerByHand();

/** A job in which a detector showed voltage, and after that a test no voltage, with a detector proven between. */
function testedAgain(spans: number): StillhotDocument {
  const drawn = draw(`
    s1 source p0 ABC kvLL=12.47
    d1 disconnect p0-p1 ABC open=ABC
    ${Array.from({ length: spans }, (_, n) => `sp${n + 1} span p${n + 1}-p${n + 2} ABC`).join("\n    ")}
    w1 work p3 ABC
  `);
  const at = "2026-05-01T08:00:00.000Z";
  const log: readonly JobLogLine[] = [
    { at, mark: "begun" },
    { at, mark: "unexpected", seen: "voltage" },
    { at, step: { do: "check-detector" } },
    { at, step: { do: "test", at: "p3" as PointId } },
  ];
  return { ...drawn, log: log as unknown as StillhotDocument["log"] } as StillhotDocument;
}

const runOf = (document: StillhotDocument) => new Run({ document } as Session);

test("a test that showed nothing says that the line may be believed again", () => {
  expect(runOf(testedAgain(5)).isTakenForLive).toBe(false);
});

test("as long as that test has not been played, nobody says that its detector was proven: all is taken for live", () => {
  const run = runOf(testedAgain(200));
  expect(run.isBehind).toBe(true);
  expect(run.isTakenForLive).toBe(true);
});

test("who does the job hears that it is worked out how it stands, and can stop that; whoever only reads of it does not wait", () => {
  const run = runOf({ ...testedAgain(200), log: [] });
  expect(run.isWorking).toBe(false);
  run.lookAhead(undefined, true);
  expect(run.look).toBeUndefined();
  expect(run.isWorking).toBe(true);
  run.stopWorking();
  expect(run.isWorking).toBe(false);
});
