import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import type { WorkPointId } from "../terms";
import { assess } from ".";

// format.md: what a work point `does` is gone from the work on. Whoever cuts a fault out has no ground set in it.
describe("a fault that the work itself takes away holds nothing down", () => {
  const cable = (fault: string, does: string) => `
    s1 source sub   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    e1 elbow  sub-a A   open=A
    u1 span   a-x   A   construction=cable lengthM=60
    ${fault}
    w1 work   x     A   ${does}
  `;
  const reportOf = (text: string) => assess(draw(text)).workPoints["w1" as WorkPointId]!;

  test.each([
    ["a fault", "f1 fault x A", "does=f1"],
    ["a failed arrester", "f1 arrester x A failed=A", "does=f1"],
  ])("%s that is mended there", (_why, fault, does) => {
    const { verdict, margin, threats } = reportOf(cable(fault, does));
    expect(verdict).toBe("could-go-live");
    expect(margin).toBe(1);
    expect(threats[0]!.exposureVolts).toBeGreaterThan(7000);
    expect(threats[0]!.volts).toBeGreaterThan(7000);
  });

  test("one that is left there is a short as drawn", () => {
    const { verdict, threats } = reportOf(cable("f1 fault x A", ""));
    expect(verdict).toBe("isolated");
    expect(threats[0]!.exposureVolts).toBeLessThan(50);
  });

  test("what it lifts elsewhere while it is there counts as well", () => {
    const text = (does: string) => `
      s1 source sub   ABC kvLL=12.47
      m1 span   sub-p1 ABC lengthM=2000
      c1 cutout p1-p2 AB   open=B
      f1 fault  p2    B
      c2 cutout p2-p3 A    open=A
      w1 work   p3    A    ${does}
    `;
    const worst = (does: string) => Math.max(...reportOf(text(does)).threats.map((it) => it.exposureVolts));
    expect(worst("does=f1")).toBeGreaterThanOrEqual(worst(""));
  });
});
