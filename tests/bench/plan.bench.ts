import { expect, test } from "vitest";
import type { StillhotDocument } from "../../src/core";
import { plan } from "../../src/core/procedure";
import { medianMilliseconds, report } from "../support/measure";
import { sidelineSystem } from "../support/sideline";

/** A drawing that nobody has looked at yet, each time: what a plan remembers is kept by the drawing's own object. */
const fresh = (devices: number): StillhotDocument => {
  const document = sidelineSystem(devices);
  const work = document.system.elements["q2"]!;
  delete work["open"];
  delete work["tagged"];
  return document as unknown as StillhotDocument;
};

test("a plan for 100 devices", () => {
  expect(plan(fresh(100)).ok).toBe(true);
  const first = medianMilliseconds(() => plan(fresh(100), { alternatives: false }), 7);
  report("first safe order, 100 devices [ms]", first, "under 200");
  const whole = medianMilliseconds(() => plan(fresh(100)), 7);
  report("whole plan with alternatives, 100 devices [ms]", whole, "under 1000");
});
