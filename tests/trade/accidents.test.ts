import { describe, expect, test } from "vitest";
import { lookFirst, type WorkPointId } from "../../src/core";
import { draw } from "../support/jobNotation";

/**
 * How people were killed by what was not on the drawing, or not as drawn, rebuilt as small drawings without places or
 * names. What the crew had looked at is `seen`. The fact that nobody knew has to be the first or the second thing to look at.
 *
 * Sources: NIOSH Fatality Assessment and Control Evaluation reports and NIOSH Publication 88-104, as published by the
 * institute, and a decision of the Occupational Safety and Health Review Commission, each for the fact alone; the drawings
 * are ours. Where no account is cited: common pattern, no source.
 */
const ACCIDENTS: readonly (readonly [what: string, source: string, drawing: string, unknown: string])[] = [
  [
    "a small business ran its pumps from a portable generator with its main breaker closed, onto a line that was taken down by a storm",
    "NIOSH FACE 90-02",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  A    open=A evidence=seen
     sp1 span        p2-p3  A    evidence=seen
     t1  transformer p3-p4  A    connection=single kva=25 primaryKv=7.2 secondaryV=240 evidence=seen
     m1  meter       p4-p5  12
     ld1 load        p5     12   kw=5 customers=1
     p2  point       evidence=seen
     p3  point       evidence=seen
     w1  work        p2     A`,
    "machine ld1",
  ],
  [
    "two lines were opened; the third, which fed a store, fed them back through the store's bank",
    "NIOSH FACE 85-25 and NIOSH Publication 88-104",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  ABC  open=AB evidence=seen
     l1  lead        p2-p3  ABC  evidence=seen
     t1  transformer p3-p4  ABC  connection=Yg-Yg kva=75 primaryKv=12.47 secondaryV=208
     p2  point       evidence=seen
     p3  point       evidence=seen
     w1  work        p2     A`,
    "other-connection t1",
  ],
  [
    "a line that a storm had broken was fed back from a bank of transformers that stayed energized",
    "NIOSH FACE 93NJ019",
    `s1  source      p1     ABC  kvLL=7.2 evidence=seen
     c1  cutout      p1-p2  A    open=A evidence=seen
     sp1 span        p2-p3  A    evidence=seen
     t1  transformer p3-p4  A    connection=single kva=50 primaryKv=4.16 secondaryV=240
     p2  point       evidence=seen
     p3  point       evidence=seen
     w1  work        p2     A`,
    "second-transformer t1",
  ],
  [
    "a conductor that was being put up touched an energized line that it crossed",
    "NIOSH FACE 89-36",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  A    open=A tagged=true blocked=true evidence=seen
     sp1 span        p2-p3  A
     p2  point       evidence=seen
     p3  point       evidence=seen
     w1  work        p2     A`,
    "crossing sp1",
  ],
  [
    "a line that had not been there before came to the last pole and was taken for dead; it was fed from down the road",
    "OSHRC Docket No. 4105",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  A    open=A evidence=seen
     sp1 span        p2-p3  A
     sp2 span        p3-p4  A
     w1  work        p2     A`,
    "goes-on p4",
  ],
  [
    "the labels of two cutouts on one pole were swapped, and the wrong one was opened",
    "common pattern, no source",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  A    open=A
     c2  cutout      p1-p3  A
     sp1 span        p2-p4  A    evidence=seen
     p2  point       evidence=seen
     p4  point       evidence=seen
     w1  work        p2     A`,
    "swapped-labels c1",
  ],
  [
    "of three circuits in one manhole one was dead; the cable that was cut for it belonged to another",
    "NIOSH FACE 90-32",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     e1  elbow       p1-p2  A    open=A evidence=seen
     e2  elbow       p1-p3  A    evidence=seen
     sp1 span        p2-p4  A    construction=cable
     sp2 span        p3-p5  A    construction=cable
     p1  point       evidence=seen
     p2  point       evidence=seen
     p3  point       evidence=seen
     p4  point       evidence=seen
     p5  point       evidence=seen
     w1  work        p4     A`,
    "other-cable sp1",
  ],
  [
    "the tie at the far end, drawn open, had been left closed",
    "common pattern, no source",
    `s1  source      p1     ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2  A    open=A evidence=seen
     sp1 span        p2-p3  A    evidence=seen
     d1  disconnect  p3-p4  A    open=A normallyOpen=true
     s2  source      p4     ABC  kvLL=12.47 evidence=seen
     p2  point       evidence=seen
     p3  point       evidence=seen
     w1  work        p2     A`,
    "other-position d1",
  ],
  [
    "the cable of the ground set was a size too small for the fault, and parted",
    "common pattern, no source",
    `s1  source      p1     ABC  kvLL=12.47 z1Ohms=[0,0.27] z0Ohms=[0,0.27] evidence=seen
     c1  cutout      p1-p2  A    open=A evidence=seen
     g1  ground      p2     A    cable=4/0
     p2  point       evidence=seen
     w1  work        p2     A`,
    "thin-ground g1",
  ],
  [
    "a house's transfer switch had failed, and its generator stood on the line",
    "common pattern, no source",
    `s1  source      p1       ABC  kvLL=12.47 evidence=seen
     c1  cutout      p1-p2    A    open=A tagged=true evidence=seen
     t1  transformer p2-p3    A    connection=single kva=25 primaryKv=7.2 secondaryV=240 evidence=seen
     ts1 transfer    p3-p5-p4 12
     gen1 generator  p4       12   kva=12 volts=240 on=true evidence=seen
     ld1 load        p5       12   kw=3 evidence=seen
     p2  point       evidence=seen
     w1  work        p2       A
     set assumeGenerators=false`,
    "machine ts1",
  ],
];

describe("what nobody knew is the first or the second thing to look at", () => {
  test.each(ACCIDENTS)("%s (%s)", (_, _source, drawing, unknown) => {
    const { entries } = lookFirst(draw(drawing), "w1" as WorkPointId);
    const first = entries.slice(0, 2).map(({ doubt }) => `${doubt.doubt} ${doubt.where}`);
    expect(first).toContain(unknown);
  });
});
