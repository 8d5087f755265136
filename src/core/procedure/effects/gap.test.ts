import { describe, expect, test } from "vitest";
import { draw, lastMove, TAP } from "../../../../tests/support/jobNotation";
import { beginJob } from "../job/state";
import {
  ampsThrough,
  degreesAcross,
  gapsMade,
  gapsOf,
  gapsToMeet,
  mismatchOf,
  outOfStepIn,
  phasesMoved,
  voltsAcross,
} from "./gap";

const TO_NEUTRAL = 12470 / Math.sqrt(3);

const apart = (degrees: number, volts = 12.47) => `
  s1 source     a   ABC kvLL=12.47
  s2 source     b   ABC kvLL=${volts} angleDeg=${degrees}
  t1 disconnect a-b ABC gang=true open=ABC
`;

const around = (drawing: string, steps: string) => lastMove(draw(drawing), steps);

describe("Across a gap", () => {
  test.each([
    [0, 0],
    [30, 30],
    [-30, 30],
    [180, 180],
    [-170, 170],
    [200, 160],
  ])("%i° of the other side are %i° apart, and 2 · 7200 V · sin of their half", (angle, degrees) => {
    const gaps = gapsOf(beginJob(draw(apart(angle))), "t1", "ABC");
    expect(gaps.map(({ letter }) => letter).join("")).toBe("ABC");
    for (const gap of gaps) {
      expect(degreesAcross(gap)).toBeCloseTo(degrees, 4);
      expect(voltsAcross(gap)).toBeCloseTo(2 * TO_NEUTRAL * Math.sin((degrees * Math.PI) / 360), 2);
    }
  });

  test.each([
    ["a thing with one end", TAP, "ld1"],
    ["a transformer", TAP, "t1"],
    ["nothing", TAP, undefined],
    ["what is not there", TAP, "x9"],
  ])("none for %s", (_why, drawing, id) => expect(gapsOf(beginJob(draw(drawing)), id, "A")).toEqual([]));

  test("letters that it does not have are left out", () =>
    expect(gapsOf(beginJob(draw(TAP)), "m1", "1A2").map(({ letter }) => letter)).toEqual(["1", "2"]));

  test("volts that no equation gives count as over every limit", () => {
    const side = { volts: Infinity, angleDeg: 0, state: "live", sources: [] } as never;
    expect(voltsAcross({ from: side, to: side })).toBe(Infinity);
  });
});

describe("Phases that a step moves", () => {
  test.each([
    ["opened", TAP, "open c1", { opened: "A", closed: "" }],
    ["closed", TAP, "open c1; close c1", { opened: "", closed: "A" }],
    ["none", TAP, "note", { opened: "", closed: "" }],
    ["what stands open already", apart(0), "close t1", { opened: "", closed: "ABC" }],
    [
      "one of three",
      "s1 source a ABC kvLL=12.47\nd1 disconnect a-b ABC open=B",
      "open d1 A",
      { opened: "A", closed: "" },
    ],
    ["what is drawn by the step", TAP, "open c1; ground p3 A as g1", { opened: "", closed: "" }],
  ])("%s", (_why, drawing, steps, wanted) => expect(phasesMoved(...around(drawing, steps))).toEqual(wanted));
});

describe("Two supplies that a step joins", () => {
  test.each([
    ["20° are joined", apart(20), 0],
    ["21° are not", apart(21), 1],
    ["30°", apart(30), 1],
    ["in step, at other volts", apart(0, 13.2), 0],
    ["three quarters of the volts are joined", apart(0, 9.36), 0],
    ["less are two voltages", apart(0, 9.34), 1],
    ["the other way about too", apart(0, 16.64), 1],
    ["volts that a drop explains are joined", apart(0, 16.6), 0],
  ])("%s", (_why, drawing, count) => {
    const moved = around(drawing, "close t1");
    expect(gapsToMeet(...moved)).toHaveLength(3);
    expect(mismatchOf(...moved) === undefined ? 0 : 1).toBe(count);
  });

  const OTHERS = apart(0).replace("open=ABC", "open=ABC\n");
  test.each([
    ["two of one system", OTHERS, "close t1", undefined],
    [
      "a station that nothing keeps in step",
      `${OTHERS}s2 source b ABC kvLL=12.47 inStep=false`,
      "close t1",
      "t1",
    ],
    ["two such stations", OTHERS.replaceAll("kvLL=12.47", "kvLL=12.47 inStep=false"), "close t1", "t1"],
    ["it is off", `${OTHERS}s2 source b ABC kvLL=12.47 inStep=false on=false`, "close t1", undefined],
    [
      "a machine that runs by itself",
      "s1 source a ABC kvLL=12.47\nt1 disconnect a-b ABC gang=true open=ABC\ng1 generator b ABC kva=150 volts=12470 on=true",
      "close t1",
      "t1",
    ],
    [
      "a machine that is joined to the system on the other phases already",
      "s1 source a ABC kvLL=12.47\nt1 disconnect a-b ABC open=A\ng1 generator b ABC kva=150 volts=12470 on=true",
      "close t1 A",
      undefined,
    ],
    [
      "a ring of one supply",
      "s1 source a ABC kvLL=12.47 inStep=false\nd1 disconnect a-b ABC\nt1 disconnect a-b ABC gang=true open=ABC",
      "close t1",
      undefined,
    ],
    [
      "both sides with one supply in common, and one of them another too",
      `
        s1 source a ABC kvLL=12.47
        s2 source b ABC kvLL=12.47 inStep=false
        d1 disconnect a-b ABC
        t1 disconnect a-b ABC gang=true open=ABC
      `,
      "close t1",
      undefined,
    ],
  ])("in step or not: %s", (_why, drawing, steps, thing) =>
    expect(outOfStepIn(...around(drawing, steps))?.thing).toBe(thing),
  );

  test("a switch whose far side goes on as other phases joins those", () => {
    const rolled = apart(0).replace("gang=true open=ABC", "gang=true open=ABC toPhases=BCA");
    const moved = around(rolled, "close t1");
    expect(degreesAcross(mismatchOf(...moved)!)).toBeCloseTo(120, 0);
    expect(gapsMade(...moved).map(({ sides }) => sides)).toEqual([
      ["a/A", "b/B"],
      ["a/B", "b/C"],
      ["a/C", "b/A"],
    ]);
  });

  test("the phase that is furthest apart is told", () => {
    const uneven = `
      s1 source     a   ABC kvLL=12.47
      s2 source     b   A   kvLL=12.47 angleDeg=30
      s3 source     b   B   kvLL=12.47 angleDeg=60
      t1 disconnect a-b AB  gang=true open=AB
    `;
    expect(mismatchOf(...around(uneven, "close t1"))?.letter).toBe("B");
  });

  test.each([
    ["one side is dead", "s1 source a ABC kvLL=12.47\nt1 disconnect a-b ABC gang=true open=ABC", "close t1"],
    ["nothing closes", apart(0).replace("open=ABC", ""), "open t1"],
  ])("none where %s", (_why, drawing, steps) => expect(gapsToMeet(...around(drawing, steps))).toEqual([]));

  test("a phase that a delta bank holds by itself is no second supply", () => {
    const bank = `
      s1 source      a   ABC kvLL=12.47
      c1 cutout      a-b ABC open=A
      t1 transformer b-c ABC connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
      l1 load        c   ABC connection=delta kw=10
    `;
    const moved = around(bank, "close c1 A");
    expect(gapsOf(moved[1], "c1", "A")[0]!.to.state).toBe("backfed");
    expect(gapsToMeet(...moved)).toEqual([]);
  });

  test.each([
    [
      "a ring of one supply, whose both sides it energizes itself",
      "s1 source a ABC kvLL=12.47\nd1 disconnect a-b ABC\nt1 disconnect a-b ABC gang=true open=ABC",
      "close t1",
      3,
    ],
    [
      "a machine that holds the other side",
      "s1 source a ABC kvLL=12.47\nt1 disconnect a-b ABC gang=true open=ABC\ng1 generator b ABC kva=150 volts=12470 on=true",
      "close t1",
      3,
    ],
    [
      "a phase that a bank holds with a machine beside it",
      `
        s1 source      a   ABC kvLL=12.47
        c1 cutout      a-b ABC open=A
        t1 transformer b-c ABC connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
        g1 generator   c   ABC kva=100 volts=480 on=true
      `,
      "close c1 A",
      1,
    ],
  ])("%s is met", (_why, drawing, steps, count) =>
    expect(gapsToMeet(...around(drawing, steps))).toHaveLength(count),
  );
});

test("the largest current through some phases", () => {
  const state = beginJob(
    draw(
      "s1 source a ABC kvLL=12.47\nd1 disconnect a-b ABC\nl1 load b A connection=wye kw=72\nl2 load b B connection=wye kw=144",
    ),
  );
  expect(ampsThrough(state, "d1", "A")).toBeCloseTo(10, 1);
  expect(ampsThrough(state, "d1", "AB")).toBeCloseTo(20, 1);
  expect(ampsThrough(state, "d1", "C")).toBeCloseTo(0, 1);
  expect(ampsThrough(state, "x", "A")).toBe(0);
  expect(ampsThrough(state, undefined, "")).toBe(0);
});
