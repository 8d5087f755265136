import { expect, test } from "vitest";
import {
  type ElementId,
  jobOf,
  settingsOf,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../../src/core";
import { assess, threatsByBruteForce } from "../../src/core/hazard";
import { circuitOf } from "../../src/core/network";
import { solutionOf } from "../../src/core/phasor";
import { sidelineSystem } from "../support/sideline";
import { medianMilliseconds, report } from "../support/measure";

/** One frame of a screen [ms]: the budget of one switch operation. Budgets are shown, not asserted: machines differ. */
const FRAME = 16.7;

let operations = 0;
/** The drawing after one more operation of a cutout that is not the work point's. */
function operated(document: StillhotDocument): StillhotDocument {
  const { elements } = document.system;
  const saved = elements["q3" as ElementId]!;
  const open = operations++ % 2 === 0 ? saved["phases"] : "";
  return {
    ...document,
    system: { ...document.system, elements: { ...elements, q3: { ...saved, open } } } as unknown as System,
  };
}

for (const [devices, budget] of [
  [100, FRAME],
  [1000, 100],
] as const)
  test(`states, volts and all threats after one switch, ${devices} devices`, () => {
    const document = sidelineSystem(devices) as unknown as StillhotDocument;
    const milliseconds = medianMilliseconds(() => assess(operated(document)));
    report(
      `states, volts, threats and exposures after one switch, ${devices} devices, of ${budget} ms`,
      milliseconds / budget,
      "at most 1",
    );
  });

test("threats by low-rank changes against brute force over the same sets", () => {
  const document = sidelineSystem(60) as unknown as StillhotDocument;
  const workPoint = Object.values(jobOf(document).workPoints)[0] as WorkPoint;
  const fast = medianMilliseconds(() => assess(operated(document)));
  const plain = medianMilliseconds(
    () =>
      threatsByBruteForce({ system: operated(document).system, settings: settingsOf(document), workPoint }),
    1,
  );
  report("brute force against the fast search, 60 devices", plain / fast, "more than 10");
  expect(plain / fast).toBeGreaterThan(10);
});

test("a solve after one switch against the first, from document to volts", () => {
  const document = sidelineSystem(1000) as unknown as StillhotDocument;
  const anew = () => JSON.parse(JSON.stringify(document)) as StillhotDocument;
  const copies = Array.from({ length: 12 }, anew);
  let next = 0;
  const first = medianMilliseconds(() => solutionOf(circuitOf(copies[next++ % copies.length]!.system)), 7);
  circuitOf(document.system);
  const again = medianMilliseconds(() => solutionOf(circuitOf(operated(document).system)));
  report("first solve against a solve after one switch, 1000 devices", first / again, "at least 5");
  expect(first / again).toBeGreaterThan(5);
});
