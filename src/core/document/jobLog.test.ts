import { expect, test } from "vitest";
import { edited } from "../../../tests/support/edited";
import type { Step } from "../steps";
import * as edits from "./edits";
import { asDrawn, differenceForJob } from "./jobDifference";
import { type JobLogLine, jobLogOf } from "./jobLog";
import { doneByLog, placesInOrder } from "./logAgainstOrder";
import { readDocument } from "./read";
import type { StillhotDocument } from "./types";
import { writeDocument } from "./write";

/** Steps in a short hand: `open c1`, `test p1 A`, `check-detector`. */
const step = (words: string): Step => {
  const [verb, thing, phases] = words.split(" ");
  const place = thing === undefined ? {} : /^[pw]/.test(thing) ? { at: thing } : { element: thing };
  return { do: verb, ...place, ...(phases === undefined ? {} : { phases }) } as unknown as Step;
};
const order = (...words: string[]): Step[] => words.map(step);
/** Lines such as `2 open c1`, `open k1` (not in the order), `2 -open c1` (struck), `2 ~open c1` (left out). */
const line = (words: string): JobLogLine => {
  const [, n, mark, what] = /^(?:(\d+) )?([-~]?)(.*)$/.exec(words)!;
  return {
    at: "2030-01-01T00:00:00Z",
    step: step(what!),
    ...(n === undefined ? {} : { n: Number(n) }),
    ...(mark === "-" ? { struck: "2030-01-01T00:01:00Z" } : {}),
    ...(mark === "~" ? { leftOut: true } : {}),
  };
};
const lines = (...words: string[]) => words.map(line);

const PLAN = ["brief", "open c1", "tag c1", "check-detector", "test p1 A", "check-detector", "ground p1"];

test.each<[what: string, log: string[], order: string[], places: (number | undefined)[]]>([
  ["an order as it was", ["1 brief", "2 open c1"], PLAN, [0, 1]],
  [
    "a step put in before what was done",
    ["1 brief", "2 open c1"],
    ["brief", "request-permit", "open c1"],
    [0, 2],
  ],
  ["a step taken out before what was done", ["2 open c1", "3 tag c1"], ["open c1", "tag c1"], [0, 1]],
  ["two steps alike", ["4 check-detector"], PLAN, [3]],
  [
    "the second of two alike, once both are done",
    ["4 check-detector", "5 test p1 A", "6 check-detector"],
    PLAN,
    [3, 4, 5],
  ],
  ["a step that was moved", ["1 brief", "2 open c1", "3 tag c1"], ["brief", "tag c1", "open c1"], [0, 2, 1]],
  ["a step that is gone ticks none", ["1 brief", "2 open c1"], ["brief", "open c2"], [0, undefined]],
  ["a step of one's own ticks none", ["open c1"], PLAN, [undefined]],
  ["what was struck ticks none", ["1 -brief", "1 brief"], PLAN, [undefined, 0]],
])("what was done keeps its place in the order: %s", (_, log, plan, places) => {
  expect(placesInOrder(lines(...log), order(...plan))).toEqual(places);
});

test("a step that is only done otherwise still counts", () => {
  const plan: Step[] = [{ ...step("open c1"), with: "load-break-tool" } as Step];
  expect(placesInOrder(lines("1 open c1"), plan)).toEqual([0]);
});

test.each<[what: string, log: string[], done: number[]]>([
  ["what was ticked", ["1 brief", "2 open c1"], [0, 1]],
  ["nothing that was left out or struck", ["1 ~brief", "2 -open c1"], []],
  ["no test that a step of one's own has undone", ["4 check-detector", "5 test p1 A", "close c1"], [3]],
  ["no test before an earlier step that was done again", ["5 test p1 A", "2 open c1"], [1]],
])("the order is marked done by the log: %s", (_, log, done) => {
  expect([...doneByLog(lines(...log), order(...PLAN))].sort()).toEqual(done);
});

const DRAWING = {
  format: "stillhot",
  formatVersion: 1,
  title: "",
  system: {
    frequencyHz: 60,
    points: { p1: { x: 0, y: 0, label: "Pole 1" }, p2: { x: 9, y: 0 } },
    elements: {
      s1: { kind: "source", at: "p1", phases: "A", kvLL: 12.47 },
      c1: { kind: "cutout", from: "p1", to: "p2", phases: "A" },
    },
  },
  job: { steps: [{ do: "brief" }, { do: "open", element: "c1" }] },
} as unknown as StillhotDocument;

const underWay = edited(DRAWING, edits.setJobLog(lines("1 brief", "2 open c1")));

test("the log is read back as it was written, and the order with it says what is done", () => {
  const read = readDocument(writeDocument(underWay));
  expect(read).toMatchObject({ warnings: [] });
  const { document } = read as { document: StillhotDocument };
  expect(document).toEqual(underWay);
  expect(document.job!["steps"]).toEqual([
    { do: "brief", done: true },
    { do: "open", element: "c1", done: true },
  ]);
});

test("what was done does not change which drawing it is", () => {
  expect(asDrawn(underWay)).toEqual(DRAWING);
});

test.each<[what: string, edit: ReturnType<typeof edits.setTitle>, difference: string]>([
  ["a name", edits.setPointKeys("p1", { label: "Pole 30" }), "words"],
  ["a place", edits.movePoints(["p1"], { x: 40, y: 0 }, 10), "none"],
  ["a phase", edits.setElementKeys("c1", { open: "A" }), "matters"],
  ["the order", edits.setSteps([step("brief")]), "matters"],
  ["the title", edits.setTitle("Quarry Lane"), "none"],
])("what a change is to the job: %s", (_, edit, difference) => {
  expect(differenceForJob(underWay, edited(underWay, edit))).toBe(difference);
});

test("a change under a job is written down, a name that is typed only once", () => {
  const at = "2030-01-01T01:00:00Z";
  const typed = edited(
    underWay,
    edits.setPointKeys("p1", { label: "Pole 3" }),
    edits.noteChange(underWay, at, "rename"),
  );
  const typedOn = edited(
    typed,
    edits.setPointKeys("p1", { label: "Pole 30" }),
    edits.noteChange(typed, at, "rename"),
  );
  expect(jobLogOf(typedOn).slice(2)).toEqual([{ at, mark: "changed", text: "rename", brief: false }]);
  const opened = edited(
    typedOn,
    edits.setElementKeys("c1", { open: "A" }),
    edits.noteChange(typedOn, at, "open"),
  );
  expect(jobLogOf(opened).at(-1)).toEqual({ at, mark: "changed", text: "open", brief: true });
});

test("a change where no job is under way is not written down", () => {
  const renamed = edited(DRAWING, edits.setPointKeys("p1", { label: "Pole 30" }));
  expect(edits.noteChange(DRAWING, "2030-01-01T01:00:00Z", "rename")(renamed)).toHaveProperty("refused");
});

test.each<[what: string, log: unknown, path: string]>([
  ["no list", "abc", "log"],
  ["a line that is nothing", [null], "log[0]"],
  ["a line without a step or a mark", [{ at: "x" }], "log[0].step"],
  ["a line without its time", [{ mark: "begun" }], "log[0].at"],
  ["a step that nobody knows", [{ at: "x", step: { do: "constructor" } }], "log[0].step.do"],
  ["a mark that nobody knows", [{ at: "x", mark: "lost" }], "log[0].mark"],
])("a log that cannot be read is said: %s", (_, log, path) => {
  const read = readDocument(JSON.stringify({ ...DRAWING, log }));
  expect(read).toMatchObject({ problems: [{ path }] });
});
