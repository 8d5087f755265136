import { expect, test } from "vitest";
import { jobOf, type Step, type StillhotDocument } from "../../src/core/document";
import { plan, rehearse } from "../../src/core/procedure";
import { medianMilliseconds, report } from "../support/measure";
import { sidelineSystem } from "../support/sideline";

/** A hundred steps on a drawing: its plan there and back, as often as it takes. */
function hundredSteps(devices: number): { fresh(): StillhotDocument; edited(): StillhotDocument } {
  const make = (): StillhotDocument => {
    const document = sidelineSystem(devices);
    const work = document.system.elements["q2"]!;
    delete work["open"];
    delete work["tagged"];
    return document as unknown as StillhotDocument;
  };
  const planned = plan(make(), { alternatives: false }).steps as readonly Step[];
  const steps: Step[] = [];
  while (steps.length < 100) steps.push(planned[steps.length % planned.length]!);
  const withSteps = (document: StillhotDocument): StillhotDocument => ({
    ...document,
    job: { ...document.job, steps: steps as never },
  });
  const one = make();
  return { fresh: () => withSteps(make()), edited: () => withSteps(one) };
}

test.each([30, 100])("a rehearsal of a hundred steps on %i devices", (devices) => {
  const { fresh, edited } = hundredSteps(devices);
  expect(jobOf(edited()).steps).toHaveLength(100);
  const first = medianMilliseconds(() => rehearse(fresh()), 5);
  report(`100 steps on ${devices} devices, never seen before [ms]`, first, "seldom");
  const again = medianMilliseconds(() => rehearse(edited()), 15);
  report(`100 steps on ${devices} devices, re-played after an edit of the plan [ms]`, again, "under 100");
});
