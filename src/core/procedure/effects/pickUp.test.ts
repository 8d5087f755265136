import { describe, expect, test } from "vitest";
import { draw, lastMove, TAP } from "../../../../tests/support/jobNotation";
import { surgesOnClosing } from "./pickUp";

/** What the last of some steps makes each link carry: `id amps for seconds`, with what melts marked. */
const surges = (drawing: string, steps: string): string[] =>
  surgesOnClosing(...lastMove(draw(drawing), steps)).flatMap(({ element, surges: of }) =>
    of.map(
      ({ why, amps, seconds, melts }) =>
        `${element} ${why} ${amps.toPrecision(3)} A ${seconds} s${melts ? " melts" : ""}`,
    ),
  );

/** A tap with two transformers behind one cutout, of 25 and 50 kVA: 3.47 and 6.94 A at 7.2 kV. */
const TWO = `${TAP}
  sp2 span        p4-p8 A  lengthM=60
  c3  cutout      p8-p9 A  fuse=K15
  t2  transformer p9-p10 A connection=single kva=50 primaryKv=7.2 secondaryV=240
`;

describe("What a closing makes links carry", () => {
  test("25 kVA at 7.2 kV: 12 times 3.47 A for 0.1 s, 25 times for 0.01 s; 8 kW comes back twice", () =>
    expect(surges(TAP, "open c2; close c2")).toEqual([
      "c1 inrush 41.7 A 0.1 s",
      "c1 inrush 86.8 A 0.01 s",
      "c1 cold-load 2.21 A 1800 s",
      "c2 inrush 41.7 A 0.1 s",
      "c2 inrush 86.8 A 0.01 s",
      "c2 cold-load 2.21 A 1800 s",
    ]));

  test("each link carries what is beyond it", () =>
    expect(surges(TWO, "open c1; close c1").filter((it) => it.endsWith("0.1 s"))).toEqual([
      "c1 inrush 125 A 0.1 s",
      "c2 inrush 41.7 A 0.1 s",
      "c3 inrush 83.3 A 0.1 s",
    ]));

  test("what stays live is not picked up again", () =>
    expect(surges(TWO, "open c3; close c3").filter((it) => it.endsWith("0.1 s"))).toEqual([
      "c1 inrush 83.3 A 0.1 s",
      "c3 inrush 83.3 A 0.1 s",
    ]));

  test("500 kVA melts both links in its inrush", () =>
    expect(
      surges(
        `${TAP}\nt1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240`,
        "open c1; close c1",
      ).filter((it) => it.includes("inrush")),
    ).toEqual([
      "c1 inrush 833 A 0.1 s melts",
      "c1 inrush 1.74e+3 A 0.01 s melts",
      "c2 inrush 833 A 0.1 s melts",
      "c2 inrush 1.74e+3 A 0.01 s melts",
    ]));

  test.each([
    ["nothing closes", TAP, "open c1"],
    ["nothing comes alive", TAP, "open c1; open c2; close c2"],
    ["a thing that is no switching", TAP, "note"],
    ["a solid blade", `${TAP}\nc1 cutout p2-p3 A fuse=solid\nc2 cutout p4-p5 A`, "open c1; close c1"],
  ])("none where %s", (_why, drawing, steps) => expect(surges(drawing, steps)).toEqual([]));

  test("a link that hangs open carries nothing", () =>
    expect(surges(TWO, "open c3; open c1; close c1").map((it) => it.slice(0, 2))).not.toContain("c3"));
});
