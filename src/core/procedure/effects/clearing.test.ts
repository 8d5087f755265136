import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";

/** What the last of some steps brought about, as it is told. */
const told = (drawing: string, steps: string): string =>
  spell(playAll(draw(drawing), parseSteps(steps, [])).at(-1)!.consequence.text);

describe("How a fault ends, in words", () => {
  test("a link that has thousands of amperes is told by the half cycle, not by millionths of a second", () =>
    expect(told(`${TAP}\nf1 fault p5 A`, "open c2; close c2")).toMatch(
      /the 10K link of cutout at pole with transformer carries \d{4} A and melts within half a cycle$/,
    ));

  test("one that has a few times its rating has its seconds", () =>
    expect(told(`${TAP}\nf1 fault p5 A ohms=100`, "open c2; close c2")).toMatch(
      /the 10K link of cutout at pole with transformer carries \d\d\.\d A and melts in [\d.]+ to [\d.]+ s$/,
    ));

  test("a few amperes of a generator trip nothing that anybody could count on", () =>
    expect(
      told(`${TAP}\ngx generator h1 12 kva=6 volts=240`, "open c2; ground p5 A as g1; start gx"),
    ).toMatch(/no link on the way melts; .* or more, if anything trips at all$/));
});
