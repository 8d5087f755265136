import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { assess } from ".";

/** Dead as drawn; with its cutout home a load hangs at the end of thirty kilometres, more than the line can bring. */
const beyondReach = (model: string) =>
  draw(`
    s1  source p1    A  kvLL=12.47 z1Ohms=[0.2,1] z0Ohms=[0.4,2]
    c1  cutout p1-p2 A  open=A
    sp1 span   p2-p3 A  lengthM=30000
    ld1 load   p3    A  kw=4000 kvar=2500 model=${model}
    w1  work   p2    A
  `);

describe("a load that falls to an impedance within a set of upsets says so", () => {
  test.each([
    ["Z", 0],
    ["PQ", 1],
  ])("model %s: %i warnings", (model, count) => {
    const { findings, workPoints } = assess(beyondReach(model));
    expect(workPoints["w1" as never]!.threats.map((it) => it.upsets.map(({ element }) => element))).toEqual([
      ["c1"],
    ]);
    const told = findings.filter(({ rule, where }) => rule === "load-model" && where === "w1");
    expect(told).toHaveLength(count);
  });
});
