import { expect, test } from "vitest";
import { isRefusal } from "../../terms";
import { type Edit, edits, isUnreadable, readDocument, type StillhotDocument } from "..";

const read = readDocument(
  JSON.stringify({
    format: "stillhot",
    formatVersion: 1,
    title: "t",
    system: { points: { p1: {}, p2: { pinned: true }, p3: { x: 5 } }, elements: {} },
  }),
);
if (isUnreadable(read)) throw new Error("it reads");
const start = read.document;

const outcome = (edit: Edit, before: StillhotDocument = start) => {
  const change = edit(before);
  return isRefusal(change) ? change.refused.key : change.after.system.points;
};

test("points are pinned, and those that are already stay so", () => {
  expect(outcome(edits.pin(["p1", "p2"]))).toEqual({
    p1: { pinned: true },
    p2: { pinned: true },
    p3: { x: 5 },
  });
});

test("points are let go, and nothing of it is left in the file", () => {
  expect(outcome(edits.unpin(["p2", "p3"]))).toEqual({ p1: {}, p2: {}, p3: { x: 5 } });
});

test("what would change nothing, or is not there, is refused", () => {
  expect(outcome(edits.pin(["p2"]))).toBe("edit.nothing");
  expect(outcome(edits.unpin(["p1"]))).toBe("edit.nothing");
  expect(outcome(edits.pin([]))).toBe("edit.nothing");
  expect(outcome(edits.pin(["p9"]))).toBe("edit.noPoint");
});
