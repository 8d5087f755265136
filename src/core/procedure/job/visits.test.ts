import { expect, test } from "vitest";
import { draw, stepsOf } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { stepSentence } from "./stepSentence";
import { visitSentence, visitsOf, withSetsOf } from "./visits";

/** Two poles: a cutout over two points of the first, a switch at the second, and the span between them. */
const TWO_POLES = `
  s1  source      p1     ABC  kvLL=12.47
  c1  cutout      p1-p2  A    label=cutout
  sp  span        p2-p3  A    lengthM=50
  d1  disconnect  p3-p4  A    label=switch
  w1  work        p2     A
`;

const visits = (steps: string): string => {
  const document = draw(TWO_POLES, steps);
  return visitsOf(document, stepsOf(document))
    .map(({ structure, steps: its }) => `${structure ?? "-"} ${its.join(",")}`)
    .join("; ");
};

test.each([
  ["", ""],
  ["brief; request-permit", "- 1,2"],
  ["brief; open c1 A; tag c1", "- 1; p1 2,3"],
  ["open c1 A; confirm; open d1 A", "p1 1,2; p3 3"],
  ["open d1 A; check-detector; test p2 A; check-detector", "p3 1; p1 2,3,4"],
  ["ground p2 A; work w1; all-clear; unground g1", "p1 1,2,3,4"],
  ["open c1 A; ground p3 A; inspect p1; unground g1", "p1 1; p3 2; p1 3; p3 4"],
  ["cut sp A; open d1 A", "p1 1; p3 2"],
  ["open c1 A; stand-clear; close d1 A", "p1 1; p3 2,3"],
  ["open c1 A; stand-clear", "p1 1,2"],
])("%s: %s", (steps, wanted) => expect(visits(steps)).toBe(wanted));

test("a visit is told by its structure and how many steps it has", () => {
  const document = draw(TWO_POLES, "brief; open c1 A; tag c1; open d1 A");
  expect(visitsOf(document, stepsOf(document)).map((it) => spell(visitSentence(document, it)))).toEqual([
    "Before setting out: one step",
    "At pole with cutout: 2 steps",
    "At pole with disconnect: one step",
  ]);
});

test("a set that the steps put on is told by its place before any of them was done", () => {
  const document = draw(TWO_POLES, "ground p2 A; unground g1");
  const [, off] = stepsOf(document);
  expect(spell(stepSentence(document, off!))).toContain("not drawn");
  expect(spell(stepSentence(withSetsOf(document, stepsOf(document)), off!))).toMatch(/^Take ground set at /);
});
