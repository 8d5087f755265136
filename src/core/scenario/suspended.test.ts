import { expect, test } from "vitest";
import { listed, scenarioFile } from "../../../tests/scenarios/library";
import { canBeSolved, planned } from "./checks";
import { resumed, suspended } from "./suspended";

/** Letters that SCORM 1.2 keeps of suspended data: the shorter of the two versions' limits (CMIString4096). */
const MOST_LETTERS = 4096;

test.each(listed.map(({ id }) => id))(
  "an attempt at %s fits in what a learning system keeps, and goes on as it was",
  (id) => {
    const file = scenarioFile(id);
    const { attempt } = canBeSolved(file, planned);
    const letters = suspended(attempt);
    expect(letters.length).toBeLessThan(MOST_LETTERS / 2);
    expect(resumed(file, letters)).toEqual(attempt);
  },
);

test("what is damaged or of another scenario is no attempt", () => {
  const letters = suspended(canBeSolved(scenarioFile("lindens"), planned).attempt);
  expect(resumed(scenarioFile("first-cutout"), letters)).toBeUndefined();
  expect(resumed(scenarioFile("lindens"), letters.slice(9))).toBeUndefined();
  expect(resumed(scenarioFile("lindens"), "")).toBeUndefined();
});
