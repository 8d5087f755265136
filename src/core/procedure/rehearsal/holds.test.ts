import { expect, test } from "vitest";
import { parseSteps } from "../../../../tests/support/jobNotation";
import { holdBefore } from "./holds";

/** Challenge and response before operating, testing, grounding, work and energizing: common practice, no source. */
test.each([
  ["the first operation only", "open c1; remove-barrel c1; stop g1", "operate - -"],
  ["a transfer switch is an operation", "set-position t1 off; open c1", "operate -"],
  ["a barrel that is put back hangs open", "remove-barrel c1; replace-barrel c1", "operate -"],
  ["the first test after switching", "test p2 A; test p3 A; open c1; test p2 A", "test - operate test"],
  ["every ground and every work", "ground p2 A; ground p3 A; work w1; work w1", "ground ground work work"],
  [
    "the first of a run that energizes",
    "close c1; attach k1; open c1; start g1",
    "energize - operate energize",
  ],
  ["nothing else", "brief; request-permit; tag c1; cover c1; unground g1; note", "- - - - - -"],
])("a hold stands before %s", (_, steps, holds) => {
  const order = parseSteps(steps, ["p2", "p3"]);
  expect(order.map((step, index) => holdBefore(order.slice(0, index), step) ?? "-").join(" ")).toBe(holds);
});
