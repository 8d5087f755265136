import { describe, expect, test } from "vitest";
import { draw, parseSteps, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import { stepSentence } from "./stepSentence";

/** A step of a drawing as one sentence. */
const told = (drawing: string, step: string): string =>
  spell(stepSentence(draw(drawing), parseSteps(step, ["p3", "p4", "h1"])[0]!));

describe("A wire that is down is guarded, not the pole beside it (common practice, no source)", () => {
  test.each([
    [
      "at one of its poles",
      "sp1 span p3-p4 A lengthM=60 parted=A",
      "barricade p4",
      /^Guard the wire that is down at /,
    ],
    [
      "at the other",
      "sp1 span p3-p4 A lengthM=60 parted=A",
      "barricade p3",
      /^Guard the wire that is down at /,
    ],
    [
      "somewhere else",
      "sp1 span p3-p4 A lengthM=60 parted=A",
      "barricade h1",
      /^Keep everyone clear of the base/,
    ],
    ["nothing is down", "", "barricade p4", /^Keep everyone clear of the base/],
    [
      "a cable",
      "sp1 span p3-p4 A construction=cable parted=A",
      "barricade p4",
      /^Keep everyone clear of the base/,
    ],
  ])("%s", (_why, drawing, step, wanted) => expect(told(`${TAP}\n${drawing}`, step)).toMatch(wanted));
});

test.each([
  ["ground p4 A as g1", /neutral end first$/],
  ["ground p4 A to earth as g1", /, earth end first$/],
  ["ground p4 A to both as g1", /, rod and neutral end first$/],
])("which end of a set goes on first is told by where it goes: %s", (step, wanted) =>
  expect(told(TAP, step)).toMatch(wanted),
);

test.each([
  ["ask n1", /^Ask the system operator to hold the reclosing of .*crossing/],
  ["ask c1", /^Ask the system operator$/],
  ["ask", /^Ask the system operator$/],
])("what the operator is asked is told by what it is about: %s", (step, wanted) =>
  expect(told(`${TAP}\nn1 nearby span=sp1 relation=crossing kvLL=12.47 label=crossing`, step)).toMatch(
    wanted,
  ),
);
