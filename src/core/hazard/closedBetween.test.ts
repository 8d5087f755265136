import { describe, expect, test } from "vitest";
import { demoDrawings } from "../../../tests/support/demoDrawings";
import { draw } from "../../../tests/support/jobNotation";
import { assess } from "./assess";

/** What is drawn closed between supplies that do not stand together, by id. */
const foundIn = (drawing: string, asked = "phase-check"): string =>
  assess(draw(drawing))
    .findings.filter(({ rule }) => rule === asked)
    .map(({ severity, where }) => `${severity} ${where}`)
    .join(", ");

/** A bank and, beside it, a switch between its two voltages. */
const beside = (bank: string, how = "open=") => `
  s1  source      p1     ABC  kvLL=12.47
  t1  transformer p1-p2  ABC  ${bank}
  sp1 span        p1-p3  ABC
  d1  disconnect  p3-p2  ABC  gang=true ${how}`;

/** Two sources with a line each, and a tie between them that is drawn closed. */
const tied = (other: string, tie = "tie disconnect p2-p3 ABC gang=true") => `
  s1  source      p1     ABC  kvLL=12.47
  c1  cutout      p1-p2  ABC
  ${tie}
  c2  cutout      p4-p3  ABC
  s2  source      p4     ABC  ${other}`;

/** Two banks on one line whose secondaries are tied. */
const banked = (other: string, tie = "d1 disconnect p4-p5 ABC gang=true") => `
  s1  source      p1     ABC  kvLL=12.47
  sp1 span        p1-p2  ABC  lengthM=200
  t1  transformer p1-p4  ABC  connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=480
  t2  transformer p2-p5  ABC  ${other}
  ${tie}`;

const STEP_DOWN = "connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=4160";
const LIKE = "connection=Yg-Yg kva=300 primaryKv=12.47 secondaryV=480";

describe("What is drawn closed between two voltages is told as closing it would be (common practice, no source)", () => {
  test.each([
    ["one side of a bank onto the other", beside(STEP_DOWN), "danger d1"],
    ["the same, open", beside(STEP_DOWN, "open=ABC"), ""],
    ["a bank that gives the line's own volts", beside(STEP_DOWN.replace("4160", "12470")), ""],
    [
      "the same, turned by 30°",
      beside("connection=D-Yg kva=500 primaryKv=12.47 secondaryV=12470"),
      "danger d1",
    ],
    ["two switches side by side", `${beside(STEP_DOWN)}\n d2 disconnect p3-p2 ABC`, "danger d1, danger d2"],
    ["a line in place of a switch", beside(STEP_DOWN).replace(/d1 .*/, "sp2 span p3-p2 ABC"), "danger sp2"],
    ["nothing on the line", beside(STEP_DOWN).replace("kvLL=12.47", "kvLL=12.47 on=false"), ""],
  ])("%s", (_why, drawing, wanted) => expect(foundIn(drawing)).toBe(wanted));

  test.each([
    ["two sources alike", tied("kvLL=12.47"), ""],
    ["10° apart", tied("kvLL=12.47 angleDeg=10"), ""],
    ["30° apart", tied("kvLL=12.47 angleDeg=30"), "danger tie"],
    ["of other volts", tied("kvLL=4.16"), "danger tie"],
    ["of other volts, with the tie open", tied("kvLL=4.16", "tie disconnect p2-p3 ABC open=ABC"), ""],
    ["of other volts, one of them off", tied("kvLL=4.16 on=false"), ""],
    ["a station that nothing keeps in step", tied("kvLL=12.47 inStep=false"), "danger tie"],
    [
      "the tie, and not what is closed beside it, is told where it is normally open",
      tied("kvLL=4.16", "sp span p2-p3 ABC").replace("p4-p3  ABC", "p4-p3 ABC normallyOpen=true"),
      "danger c2",
    ],
    ["phases crossed on the way", tied("kvLL=12.47", "j1 lead p2-p3 ABC toPhases=BAC"), "danger j1"],
  ])("%s", (_why, drawing, wanted) => expect(foundIn(drawing)).toBe(wanted));

  test.each([
    ["two banks alike", banked(LIKE), ""],
    ["of other volts", banked(LIKE.replace("480", "208")), "danger d1"],
    ["of another connection", banked(LIKE.replace("Yg-Yg", "D-Yg")), "danger d1"],
    [
      "in parallel on one point",
      banked(LIKE.replace("480", "208"), "").replace("p2-p5", "p2-p4"),
      "danger t2",
    ],
    ["in parallel on one point, alike", banked(LIKE, "").replace("p2-p5", "p2-p4"), ""],
    [
      "in parallel on one point, turned",
      banked(LIKE.replace("Yg-Yg", "D-Yg"), "").replace("p2-p5", "p2-p4"),
      "danger t2",
    ],
    [
      "in parallel on one point, alike, of a station that nothing keeps in step",
      `${banked(LIKE, "").replace("p2-p5", "p9-p4")}
  s2  source      p9     ABC  kvLL=12.47 inStep=false`,
      "danger t2",
    ],
  ])("banks: %s", (_why, drawing, wanted) => expect(foundIn(drawing)).toBe(wanted));

  test("a closed ring of one feeder is none, nor is anything on the demos", () => {
    expect(
      foundIn(`
        s1  source     p1     ABC  kvLL=12.47
        sp1 span       p1-p2  ABC
        sp2 span       p1-p3  ABC
        d1  disconnect p2-p3  ABC  normallyOpen=true`),
    ).toBe("");
    expect(
      demoDrawings().flatMap(([name, it]) =>
        assess(it).findings.some(({ rule }) => rule === "phase-check") ? [name] : [],
      ),
    ).toEqual([]);
  });
});

describe("A regulator that is drawn bypassed off neutral is told as bypassing it would be (common practice, no source)", () => {
  const REGULATOR = `
    s1  source     p1     ABC  kvLL=12.47
    vr1 regulator  p1-p2  ABC  taps={"A":8,"B":0,"C":0}
    by  disconnect p1-p2  ABC  gang=true`;
  test.each([
    ["by a switch beside it", REGULATOR, "danger vr1"],
    ["its bypass open", `${REGULATOR} open=ABC`, ""],
    ["by a line beside it", REGULATOR.replace("disconnect", "span").replace("gang=true", ""), "danger vr1"],
    ["at neutral", REGULATOR.replace(":8", ":0"), ""],
    ["switched out", REGULATOR.replace("taps=", "open=ABC taps="), ""],
    ["switched out on the phase that is off neutral", REGULATOR.replace("taps=", "open=A taps="), ""],
    ["its own bypass flag set", REGULATOR.replace("taps=", "bypassed=true taps="), ""],
  ])("%s", (_why, drawing, wanted) => expect(foundIn(drawing, "regulator-neutral")).toBe(wanted));
});
