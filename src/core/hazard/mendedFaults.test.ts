import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import type { WorkPointId } from "../terms";
import { assess, type Threat } from ".";

const reportOf = (text: string, id = "w1") => assess(draw(text)).workPoints[id as WorkPointId]!;
const namesOf = ({ upsets }: Threat) => upsets.map((it) => it.element).join(" ");

// format.md: what a work point `does` is gone from the work on. Whoever cuts a fault out has no ground set in it.
describe("a fault that the work itself takes away holds nothing down", () => {
  const cable = (fault: string, does: string) => `
    s1 source sub   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    e1 elbow  sub-a A   open=A
    u1 span   a-x   A   construction=cable lengthM=60
    ${fault}
    w1 work   x     A   ${does}
  `;

  test.each([
    ["a fault", "f1 fault x A", "does=f1"],
    ["a failed arrester", "f1 arrester x A failed=A", "does=f1"],
    ["the short that a spike left there, which nobody had to name", "spike1 fault x A", ""],
  ])("%s that is mended there", (_why, fault, does) => {
    const { verdict, margin, threats } = reportOf(cable(fault, does));
    expect(verdict).toBe("could-go-live");
    expect(margin).toBe(1);
    expect(threats[0]!.exposureVolts).toBeGreaterThan(7000);
    expect(threats[0]!.volts).toBeGreaterThan(7000);
  });

  test.each([
    ["one that is left there", "f1 fault x A", ""],
    ["the short of a spike in another place", "spike1 fault a A", ""],
    ["one that is still to be put in", "f1 fault x A\n a1 arrester x A failed=A planned=true", "does=a1"],
  ])("%s is a short as drawn, or nothing", (_why, fault, does) => {
    const { verdict, threats } = reportOf(cable(fault, does));
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

describe("of several faults each may be mended first", () => {
  /** A shorted to its neutral, and to B, which alone can be closed: with the first short gone A follows B. */
  const twoIn = (works: string) => `
    s1 source sub   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    e1 elbow  sub-a B   open=B
    u1 span   a-x   AB  construction=cable lengthM=60
    f1 fault  x     A
    f2 fault  x     AB  to=phases
    ${works}
  `;

  test.each([
    ["both by one work", "w1 work x A does=f1,f2"],
    ["one each by two works", "w1 work x A does=f2\n w2 work a A does=f1"],
    ["both by the crew beside", "w1 work x A\n w2 work a A does=f1,f2"],
  ])("%s", (_why, works) => {
    const { verdict, threats } = reportOf(twoIn(works));
    expect(verdict).toBe("could-go-live");
    expect(Math.max(...threats.map((it) => it.exposureVolts))).toBeGreaterThan(7000);
  });

  test("five of them: the one that holds the line down goes first, or alone is left", () => {
    const many = (works: string) => `${twoIn(works)}
      f3 fault x A to=earth ohms=400
      f4 fault x A to=earth ohms=500
      f5 fault x A to=earth ohms=600`;
    const highest = (does: string) =>
      Math.max(...reportOf(many(`w1 work x A ${does}`)).threats.map((it) => it.exposureVolts));
    expect(highest("does=f2,f3,f4,f5")).toBeLessThan(50);
    expect(highest("does=f1,f3,f4,f5")).toBeGreaterThan(5000);
    expect(highest("does=f1,f2,f3,f4,f5")).toBeGreaterThan(5000);
  });
});

test("a fault that the crew beside takes away is no ground set here either", () => {
  const works = (does: string) => `
    s1 source sub   ABC kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    e1 elbow  sub-a A   open=A
    u1 span   a-x   A   construction=cable lengthM=60
    u2 span   x-y   A   construction=cable lengthM=60
    f1 fault  y     A   to=earth
    w1 work   x     A
    w2 work   y     A   ${does}
  `;
  const highest = (does: string) => Math.max(...reportOf(works(does)).threats.map((it) => it.exposureVolts));
  expect(highest("")).toBeLessThan(2500);
  expect(highest("does=f1")).toBeGreaterThan(7000);
});

test("what takes two upsets with the fault there and one without is told by the one", () => {
  const text = (does: string) => `
    s1 source a   A kvLL=12.47 z1Ohms=[0,10] z0Ohms=[0,10]
    s2 source b   A kvLL=12.47 z1Ohms=[0,10] z0Ohms=[0,10]
    e1 elbow  a-x A open=A
    e2 elbow  b-x A open=A
    f1 fault  x   A ohms=0.25
    set exposureLimitVolts=195
    w1 work   x   A ${does}
  `;
  expect(reportOf(text("")).threats.map(namesOf)).toEqual(["e1", "e2", "e1 e2"]);
  expect(reportOf(text("does=f1")).threats.map(namesOf)).toEqual(["e1", "e2"]);
});

describe("what is found beside the verdict is asked without the fault too", () => {
  const foundIn = (text: string, steps = "") =>
    assess(draw(text, steps))
      .findings.filter(({ where }) => where === "w1")
      .map((it) => `${it.rule}: ${spell(it.message)}`)
      .join("\n");

  test.each([
    [
      "a phase that only the fault joins to anything that feeds",
      `s1 source sub    A  kvLL=12.47
       c1 cutout sub-p1 A  open=A
       m1 span   p1-x   AB
       f1 fault  x      AB to=phases
       w1 work   x      B  does=f1`,
      /feed-not-drawn: .* feed B here/,
    ],
    [
      "a line along another that the fault holds at earth",
      `s1 source sub    A  kvLL=12.47
       c1 cutout sub-p1 A  open=A
       m1 span   p1-x   A  lengthM=5000
       n1 nearby span=m1 relation=parallel kvLL=34.5 spacingM=3
       f1 fault  x      A
       w1 work   x      A  does=f1`,
      /induced-exposure: phase A is induced/,
    ],
  ])("%s", (_why, text, wanted) => expect(foundIn(text)).toMatch(wanted));

  test("the pole that stands at volts once what holds the line at earth elsewhere is gone", () => {
    const text = (does: string) => `
      s1 source sub    A kvLL=12.47 z1Ohms=[0,10] z0Ohms=[0,10]
      c1 cutout sub-p1 A open=A tagged=true
      m1 span   p1-y   A lengthM=300
      m2 span   y-x    A lengthM=300
      f1 fault  y      A to=earth
      g1 ground x      A to=neutral cable=4/0
      set exposureLimitVolts=195
      w1 work   x      A
      w2 work   y      A ${does}
    `;
    const tested = "check-detector done=true; test x A done=true";
    expect(foundIn(text(""), tested)).not.toMatch(/step-touch/);
    expect(foundIn(text("does=f1"), tested)).toMatch(/step-touch: .* stand at 3\d\d V/);
  });

  test("a line that lies live beside another once the fault is gone is told as live", () => {
    const text = (does: string) => `
      s1 source sub    A kvLL=12.47
      c1 cutout sub-p1 A open=A
      m1 span   p1-x   A lengthM=5000
      n1 nearby span=m1 relation=parallel kvLL=34.5 spacingM=3
      f1 fault  x      A
      w1 work   x      A ${does}
    `;
    expect(reportOf(text("")).verdict).not.toBe("live");
    expect(reportOf(text("does=f1"))).toMatchObject({ verdict: "live", margin: 0 });
  });
});
