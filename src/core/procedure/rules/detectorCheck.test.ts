import { expect, test } from "vitest";
import { findingsAtEnd } from ".";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "detector-check",
  "common practice: a detector that shows nothing may be broken; it is proven right before a test and right after",
  TAP,
  [
    ["not proven before", "test p2 A", "danger p2"],
    ["proven, but not right before", "check-detector; tag c1; test p2 A", "danger p2"],
    ["proven right before", "check-detector; test p2 A", ""],
    ["several tests in a row", "check-detector; test p2 A; test p3 A; test p4 A", ""],
    ["not proven again after", "lift k1; check-detector; test p2 A; ground p2 A", "warning p2"],
    ["it showed volts itself: the crew may brief at once", "check-detector; test p1 A; brief", ""],
    [
      "it showed volts, then nothing",
      "test p1 A; test p9 A; brief",
      "warning job",
      "c3 cutout p1-p9 A open=A",
    ],
    ["proven again", "lift k1; check-detector; test p2 A; check-detector; ground p2 A", ""],
    ["the check after it is what is asked for", "lift k1; check-detector; test p2 A; check-detector", ""],
    ["a note lies between nothing", "check-detector; note; test p2 A; note; check-detector", ""],
  ],
);

test.each([
  ["not proven again at the end of the job", "lift k1; check-detector; test p2 A", ["warning job"]],
  ["proven again", "lift k1; check-detector; test p2 A; check-detector", []],
])("detector-check, at the end: %s", (_why, steps, wanted) => {
  const found = findingsAtEnd(playAll(draw(TAP), parseSteps(steps, [])).at(-1)!.state);
  expect(
    found
      .filter(({ rule }) => rule === "detector-check")
      .map(({ severity, where }) => `${severity} ${where}`),
  ).toEqual(wanted);
});
