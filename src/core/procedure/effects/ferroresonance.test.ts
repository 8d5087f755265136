import { describe, expect, test } from "vitest";
import { draw, lastMove } from "../../../../tests/support/jobNotation";
import { ferroresonanceRisk } from "./ferroresonance";

/** A delta bank of 150 kVA behind 300 m of cable, with 1 kW on it. */
const BANK = `
  s1   source      sub    ABC kvLL=12.47
  c1   cutout      sub-p1 ABC fuse=K25
  sp1  span        p1-p2  ABC lengthM=300 construction=cable
  t1   transformer p2-p3  ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480
  ld1  load        p3     ABC connection=wye kw=1
`;

const risk = (more: string, steps: string) =>
  ferroresonanceRisk(...lastMove(draw(`${BANK}\n${more}`), steps));

const kva150 = (connection: string) =>
  `t1 transformer p2-p3 ABC connection=${connection} kva=150 primaryKv=12.47 secondaryV=480`;

describe("Single poles of a bank over cable: shared/reference/ferroresonance-and-backfeed.json", () => {
  test("which bank, over which cable, and how much is on it: 1 kW of 150 kVA", () =>
    expect(risk("", "open c1 A")).toEqual({
      bank: "t1",
      cable: "sp1",
      loadPercent: 100 / 150,
      isGrounded: false,
    }));

  test.each(["Y-D", "D-D", "Y-Y"])("an ungrounded primary, %s", (connection) =>
    expect(risk(`${kva150(connection)}\nld1 none`, "open c1 A")?.isGrounded).toBe(false),
  );

  test.each(["Yg-Yg", "Yg-D", "Yg-Y"])("a star on the neutral, %s, is seldom and is said", (connection) =>
    expect(risk(`${kva150(connection)}\nld1 none`, "open c1 A")?.isGrounded).toBe(true),
  );

  test.each([
    ["7.4 kW: 4.9 %", 7.4, true],
    ["7.5 kW: 5 % damps it", 7.5, false],
  ])("%s", (_why, kw, isRisk) =>
    expect(risk(`ld1 load p3 ABC connection=wye kw=${kw}`, "open c1 A") !== undefined).toBe(isRisk),
  );

  test("a pole that is closed onto the dead bank rings as one that is opened", () =>
    expect(risk("c1 cutout sub-p1 ABC fuse=K25 open=ABC", "close c1 A")?.bank).toBe("t1"));

  test("loads of other banks damp nothing", () =>
    expect(
      risk(
        "t2 transformer p2-p9 ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480\nld2 load p9 ABC connection=wye kw=50",
        "open c1 A",
      )?.loadPercent,
    ).toBeCloseTo(100 / 150, 9));

  test.each([
    ["a gang switch", "c1 disconnect sub-p1 ABC gang=true", "open c1"],
    ["a step that moves nothing", "", "note"],
    ["overhead line", "sp1 span p1-p2 ABC lengthM=300", "open c1 A"],
    ["a line without supply", "s1 source sub ABC kvLL=12.47 on=false", "open c1 A"],
    [
      "cable before the switch alone",
      "s1 source s0 ABC kvLL=12.47\nsp0 span s0-sub ABC lengthM=300 construction=cable\nsp1 span p1-p2 ABC lengthM=300",
      "open c1 A",
    ],
    [
      "a bank before the switch alone",
      "t1 transformer sub-p3 ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480",
      "open c1 A",
    ],
    ["no bank", "t1 none\nld1 none", "open c1 A"],
    [
      "a single unit",
      "t1 transformer p2-p3 A connection=single kva=50 primaryKv=7.2 secondaryV=240 secondary=two-wire\nld1 none",
      "open c1 A",
    ],
  ])("none: %s", (_why, more, steps) => expect(risk(more, steps)).toBeUndefined());

  test("a phase that no unit of the bank is on rings nothing", () =>
    expect(
      risk(
        "t1 transformer p2-p3 AB connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240\nld1 none",
        "open c1 C",
      ),
    ).toBeUndefined());

  // Which end is drawn first says what feeds what when all is normal; a bank rings by what feeds it now.
  test.each(["open c1 A", "open c1 A; open c1 B"])(
    "the same where the cutout is drawn the other way about: %s",
    (steps) => expect(risk("c1 cutout p1-sub ABC fuse=K25", steps)).toEqual(risk("", steps)),
  );

  const BACKWARD = `
    s1  source      sub    ABC kvLL=12.47 on=false
    s2  source      p9     ABC kvLL=12.47
    c1  cutout      p2-p9  ABC fuse=K25
    d1  disconnect  sub-p1 ABC gang=true open=ABC
  `;
  test.each([
    ["a pole opened", "", "open c1 A"],
    ["a pole closed", "c1 cutout p2-p9 ABC fuse=K25 open=ABC", "close c1 A"],
    [
      "two poles opened of which one stays fed from its own end",
      "s1 source sub B kvLL=12.47\nd1 disconnect sub-p1 ABC gang=true",
      "open c1 AB",
    ],
  ])("a bank that is fed from the far end, %s", (_why, more, steps) =>
    expect(risk(`${BACKWARD}\n${more}`, steps)?.bank).toBe("t1"),
  );

  test("what stays fed from its own end does not ring", () =>
    expect(
      risk(`${BACKWARD}\ns1 source sub ABC kvLL=12.47\nd1 disconnect sub-p1 ABC gang=true`, "open c1 A"),
    ).toBeUndefined());
});
