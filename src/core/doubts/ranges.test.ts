import { expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { WorkPointId } from "../terms";
import { rangesOf } from ".";

test("a way that is none with the numbers moved is asked without the fault that the work takes away, too", () => {
  const document = draw(`
    s1 source p1   A kvLL=0.4 z1Ohms=[0,0.1] z0Ohms=[0,0.1]
    s2 source p2   A kvLL=0.4 z1Ohms=[0,0.1] z0Ohms=[0,0.1]
    m1 span   p1-a A lengthM=2100
    m2 span   p2-b A lengthM=2100
    e1 cutout a-x  A open=A
    e2 cutout b-x  A open=A
    f1 fault  x    A
    f2 fault  x    A ohms=10
    set exposureLimitVolts=186
    w1 work   x    A does=f1
  `);
  // One of the two feeders does it alone where its line is shorter: there both are no minimal set, and do no less than one.
  const both = rangesOf(document, "w1" as WorkPointId).ways.find(({ upsets }) => upsets.length === 2)!;
  expect(both.exposureVolts.least).toBeGreaterThan(175);
  expect(both.exposureVolts.most).toBeLessThan(231);
});
