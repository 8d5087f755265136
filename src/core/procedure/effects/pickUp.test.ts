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

  // A drawing's first end is the source side when all is normal; a link melts whichever way its current goes.
  test.each(["c1 cutout p3-p2 A fuse=K25", "c2 cutout p5-p4 A fuse=K10", "c3 cutout p9-p8 A fuse=K15"])(
    "the same where a cutout is drawn the other way about: %s",
    (turned) =>
      expect(surges(`${TWO}\n${turned}`, "open c1; close c1")).toEqual(surges(TWO, "open c1; close c1")),
  );

  test("a line that is fed from its far end is picked up through its first cutout, backward", () => {
    const tied = `${TAP}
      s2  source      p9    A kvLL=12.47
      tie disconnect  p9-p4 A open=A
      t2  transformer p2-p8 A connection=single kva=500 primaryKv=7.2 secondaryV=240
    `;
    // 500 kVA at 7.2 kV: 12 times 69.4 A.
    expect(surges(tied, "open c1; lift k1; close tie; close c1")[0]).toBe("c1 inrush 833 A 0.1 s melts");
  });

  const RING = `
    s1 source      a   A kvLL=12.47
    d1 disconnect  a-b A
    c1 cutout      b-c A fuse=K10
    c2 cutout      b-d A fuse=K10
    sp span        c-d A lengthM=50
    t1 transformer d-e A connection=single kva=25 primaryKv=7.2 secondaryV=240
  `;
  test("in a ring any link may carry all of it", () =>
    expect(surges(RING, "open d1; close d1").filter((it) => it.endsWith("0.1 s"))).toEqual([
      "c1 inrush 41.7 A 0.1 s",
      "c2 inrush 41.7 A 0.1 s",
    ]));

  test("one that hangs open between what comes alive carries nothing", () =>
    expect(surges(RING, "open c1; open d1; close d1").filter((it) => it.startsWith("c1"))).toEqual([]));

  test("a link of three phases of which one comes alive", () => {
    const three = `
      s1 source      a   ABC kvLL=12.47
      d1 disconnect  a-b ABC open=ABC
      c1 cutout      b-c ABC fuse=K10
      t1 transformer c-e A connection=single kva=25 primaryKv=7.2 secondaryV=240
    `;
    expect(surges(three, "close d1 A")[0]).toBe("c1 inrush 41.7 A 0.1 s");
    expect(surges(three, "close d1 C")[0]).toBe("c1 inrush 0.00 A 0.1 s");
  });

  test("a load that the link carried already does not come back cold", () => {
    const beside =
      "s1 source a A kvLL=12.47\nc1 cutout a-b A fuse=K25\nl1 load b A connection=wye kw=72\nd1 disconnect b-c A open=A\nl2 load c A connection=wye kw=7.2";
    // 7.2 kW at 7.2 kV, twice; the 10 A that flowed before are none of it.
    expect(surges(beside, "close d1").at(-1)).toMatch(/^c1 cold-load (2\.00|1\.99) A 1800 s$/);
  });
});
