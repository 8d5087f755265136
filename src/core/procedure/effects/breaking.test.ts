import { describe, expect, test } from "vitest";
import { BANKED, draw, lastMove, TAP } from "../../../../tests/support/jobNotation";
import { breakingsOf, keepsArc, worstOf } from "./breaking";

/** What the last of some steps breaks, phase by phase. */
const broken = (drawing: string, steps: string) => breakingsOf(...lastMove(draw(drawing), steps));

const told = (drawing: string, steps: string): string[] =>
  broken(drawing, steps).map(
    ({ element, letter, amps, volts, limit }) =>
      `${element} ${letter} ${amps.toPrecision(3)} A, ${volts.toFixed(0)} V, may ${limit.amps} A`,
  );

/** One phase of 240 V to the neutral, opened in front of a load of so many kilowatts. */
const lowVoltage = (kw: number) => `
  s1 source a   ABC kvLL=0.4157
  sw disconnect a-b A   loadBreakAmps=30
  ld load       b   A   connection=wye kw=${kw}
`;

describe("What an opening breaks", () => {
  test.each([
    ["8 kW at 7.2 kV", TAP, "open c1", ["c1 A 1.11 A, 7200 V, may 10 A"]],
    ["a phase that is open already is not broken again", TAP, "open c1; remove-barrel c1", []],
    ["what does not open breaks nothing", TAP, "tag c1", []],
    ["what has nothing that opens, and so stays as it is", TAP, "open t1", []],
    ["nor has a load", TAP, "open ld1", []],
    ["a closing breaks nothing", TAP, "open c1; close c1", []],
    [
      "phase by phase",
      `s1 source a ABC kvLL=12.47\nd1 disconnect a-b ABC\nld load b ABC connection=wye kw=216`,
      "open d1 AB",
      ["d1 A 10.0 A, 7200 V, may 0.5 A", "d1 B 10.0 A, 7200 V, may 0.5 A"],
    ],
  ])("%s", (_why, drawing, steps, wanted) =>
    expect(told(drawing, steps).map((it) => it.replace(/may 0(\.\d+)? A/, "may 0.5 A"))).toEqual(wanted),
  );

  test("what holds the gap from the other side leaves nothing to break", () => {
    const loop = `
      s1 source a   A kvLL=12.47
      d1 disconnect a-b A
      sp1 span      a-c A lengthM=50
      d2 disconnect c-b A
      ld load       b   A connection=wye kw=720
    `;
    const [it] = broken(loop, "open d1");
    expect(it!.volts).toBeLessThan(13);
    expect(it!.amps).toBe(0);
  });

  // Up to 300 V a current of no more than an ampere goes out by itself (common practice, no source).
  test.each([
    ["0.9 A at 240 V goes out by itself", 0.216, 0],
    ["1.1 A at 240 V does not", 0.264, 1.1],
  ])("%s", (_why, kw, amps) => {
    const it = worstOf(broken(lowVoltage(kw), "open sw"))!;
    expect(it.amps).toBeCloseTo(amps, 1);
  });

  // Holm: under 13 V none stands; up to 300 V none of an ampere or less.
  test.each([
    [100, 12.9, false],
    [100, 13, true],
    [1, 300, false],
    [1.01, 300, true],
    [1, 301, true],
    [0.5, 7200, true],
  ])("whether an arc of %s A stands at %s V", (amps, volts, stands) =>
    expect(keepsArc(amps, volts)).toBe(stands),
  );

  // 50 kVA is excited by 0.5 % of its 208 A, at a right angle to what 0.3 kW draw and against what a capacitor does.
  test.each([
    ["what excites a transformer goes out by itself on its legs", "", 0],
    ["a house behind it does not", "ly load q1 12 connection=delta kw=0.3 customers=1", 1.63],
    [
      "nor does one whose meter is in its way",
      "m1 meter q1-h 12\nly load h 12 connection=delta kw=0.3",
      1.63,
    ],
    ["nor a capacitor", "cy capacitor q1 12 kvar=0.6 kvLL=0.24 connection=delta", 1.46],
    [
      "nor what the legs of a far larger unit take",
      "t1 transformer p1-q1 B connection=single kva=500 primaryKv=7.2 secondaryV=240",
      10.4,
    ],
  ])("%s", (_why, more, amps) => {
    const [it] = broken(`${BANKED}\n${more}`, "open x1; cut j1");
    expect(it!.through).toBeGreaterThan(1);
    expect(it!.volts).toBeGreaterThan(100);
    expect(it!.amps).toBeCloseTo(amps, 1);
  });

  // 750 kVA are excited by 0.5 % of their 902 A.
  const bank = (secondaryV: number, kva: number) => `
    s1 source      p0    ABC kvLL=12.47
    t1 transformer p0-q1 ABC connection=Yg-Yg kva=${kva} primaryKv=12.47 secondaryV=${secondaryV}
    j1 lead        q1-q  ABC
    t2 transformer q-r   ABC connection=Yg-Yg kva=${kva} primaryKv=${secondaryV / 1000} secondaryV=208
  `;
  test.each([
    ["a bank at 277 V is no leg of 120 V: what excites it arcs", bank(480, 750), "cut j1 A", 4.51],
    ["the same current at 120 V goes out by itself", bank(208, 325), "cut j1 A", 0],
  ])("%s", (_why, drawing, steps, amps) => {
    const [it] = broken(drawing, steps);
    expect(it!.through).toBeCloseTo(4.51, 1);
    expect(it!.amps).toBeCloseTo(amps, 1);
  });

  test("what a second transformer holds breaks nothing, and its current is told", () => {
    const [it] = broken(BANKED, "cut j1");
    expect(it!.amps).toBe(0);
    expect(it!.through).toBeGreaterThan(30);
    expect(it!.volts).toBeLessThan(13);
  });

  test("a line that is cut breaks charging current only (common practice)", () =>
    expect(broken(TAP, "cut main A")[0]!.limit).toEqual({ amps: 0.5, basis: "lead" }));

  test("0.9 A at 7.2 kV does not go out by itself", () => {
    const it = worstOf(broken(`${TAP}\nld1 load h1 12 connection=delta kw=6.48`, "open c1"))!;
    expect(it.amps).toBeCloseTo(0.9, 1);
  });

  test.each([
    ["an open gap breaks what the company's procedure says", TAP, "open c1", 10, "bare"],
    ["a span that is cut breaks what a lead may", TAP, "cut sp1 A with lead-cutters", 0.5, "lead"],
    ["a clamp", TAP, "lift k1", 0.5, "clamp"],
  ])("%s", (_why, drawing, steps, amps, basis) =>
    expect(worstOf(broken(drawing, steps))!.limit).toEqual({ amps, basis }),
  );

  test("a tool that breaks load breaks more than the open gap", () =>
    expect(worstOf(broken(TAP, "open c1 A with load-break-tool"))!.limit.amps).toBeGreaterThan(10));

  test("the phase that breaks most is told", () => {
    const uneven =
      "s1 source a ABC kvLL=12.47\nd1 disconnect a-b ABC\nl1 load b A connection=wye kw=72\nl2 load b B connection=wye kw=144";
    expect(worstOf(broken(uneven, "open d1"))).toMatchObject({ letter: "B", element: "d1" });
    expect(worstOf([])).toBeUndefined();
  });
});
