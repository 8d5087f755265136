import { expect, test } from "vitest";
import { checkRule, draw, TAP } from "../../../../tests/support/jobNotation";
import type { ElementId } from "../../terms";
import { permitReasonForElement } from "../job/section";

checkRule(
  "permit-first",
  "1910.269(m)(3)(i): a designated employee asks the operator to deenergize a particular section; a transformer's own tap needs no permit where no other feed is drawn",
  `${TAP}
  sp2  span         p4-p7   A    lengthM=70
  c3   cutout       p7-p8   A    fuse=K6
  t2   transformer  p8-p9   A    connection=single kva=15 primaryKv=7.2 secondaryV=240
  ld2  load         p9      12   connection=delta kw=4 customers=1
`,
  [
    ["a section with two transformers is a line", "open c1 with load-break-tool", "danger c1"],
    [
      "a transformer's own tap is not, though its customers may own generators",
      "open c2 with load-break-tool",
      "",
    ],
    ["the request alone is not enough", "request-permit; open c1", "danger c1"],
    ["held", "request-permit; receive-permit; confirm; open c1", ""],
    ["received without a request", "receive-permit", "note job"],
    ["received after one", "request-permit; receive-permit", ""],
    ["held as the file begins", "open c1", "", "job permit=held"],
    [
      "a drawn generator on the tap makes it one",
      "open c2",
      "danger c2",
      "g2 generator h1 12 kva=6 volts=240",
    ],
    [
      "so does a transfer switch",
      "open c2",
      "danger c2",
      "m1 transfer p6-h1-gx 12\ng2 generator gx 12 kva=6 volts=240\nh1 point kind=service",
    ],
    [
      "so does a normally open tie",
      "open c2",
      "danger c2",
      "d9 disconnect p5-p20 A open=A normallyOpen=true\ns9 source p20 A kvLL=12.47",
    ],
    [
      "so does an open thing with something live behind it",
      "open c2",
      "danger c2",
      "d9 disconnect p5-p20 A open=A\ns9 source p20 A kvLL=12.47",
    ],
    [
      "so does a transformer in parallel on the secondary",
      "open c2",
      "danger c2",
      "t9 transformer p1-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240",
    ],
    [
      "so does a customer who takes primary volts beside it",
      "open c2",
      "danger c2",
      "ld9 load p5 A kw=20 customers=1",
    ],
    ["a blown link is no tie", "open c2", "", "c2 cutout p4-p5 A blown=A\nd5 none"],
    ["work on the line needs it as much", "work w1", "danger w1"],
    ["a meter is no line section", "pull m1", ""],
    [
      "a meter with a generator behind it is none either",
      "pull m1",
      "",
      "g2 generator h1 12 kva=6 volts=240",
    ],
    [
      "closed again after the release, by the operator's word",
      "request-permit; receive-permit; open c1; release-permit; close c1",
      "",
    ],
    [
      "opened after the release, at the operator's word",
      "request-permit; receive-permit; release-permit; open c1",
      "",
    ],
    ["a single crew with the opening in its sight and control", "open c1", "", "set singleCrew=true"],
    ["nobody operates, and the job says why", "open c1", "", "job operator=none text=alone,all-in-sight"],
    [
      "nobody operates, and what is opened is out of sight of the work",
      "open c1",
      "danger c1",
      "job operator=none text=alone\nw1 work p6 1",
    ],
    [
      "a single crew, and the opening leaves the work to a tie that is out of its sight",
      "open c1",
      "danger c1",
      "set singleCrew=true\nw1 work p3 A\nd9 disconnect p8-p20 A open=A normallyOpen=true\ns9 source p20 A kvLL=12.47",
    ],
    [
      "a single crew that works with nothing open",
      "work w1 with hot-stick",
      "danger w1",
      "set singleCrew=true",
    ],
    [
      "two openings in a row, both in sight",
      "open c1; tag c1; lift k1; tag k1; work w1",
      "",
      "set singleCrew=true assumeGenerators=false",
    ],
    [
      "two openings in a row, one of them out of sight",
      "open c9; tag c9; open c1; tag c1; work w1",
      "danger w1",
      "set singleCrew=true assumeGenerators=false\nmain none\nm1a span sub-p0 ABC\nc9 disconnect p0-p01 ABC\nm1b span p01-p1 ABC",
    ],
    ["nobody operates, and nobody says why", "open c1", "danger c1", "job operator=none"],
    ["one of the crew operates", "open c1", "danger c1", "job operator=crew text=alone,all-in-sight"],
    [
      "nobody operates, and another opening is out of sight",
      "open c1; work w1",
      "danger w1",
      "job operator=none text=alone\nw1 work p3 A\nd9 disconnect p8-p20 A open=A normallyOpen=true\ns9 source p20 A kvLL=12.47",
    ],
    [
      "a single crew with another opening out of its sight",
      "open c1; work w1",
      "danger w1",
      "set singleCrew=true\nw1 work p3 A\nd9 disconnect p8-p20 A open=A normallyOpen=true\ns9 source p20 A kvLL=12.47",
    ],
  ],
);

test("a broken wire is no tie, though a bank feeds its far end backwards", () => {
  const document = draw(`
    s1   source       sub    ABC  kvLL=12.47
    sw1  disconnect   sub-p2 ABC  gang=true loadBreakAmps=600
    sp1  span         p2-p3  ABC  parted=B
    t4   transformer  p3-p6  ABC  connection=D-D kva=150 primaryKv=12.47 secondaryV=480
    ld3  load         p3     ABC  kw=20 customers=1
    ld4  load         p6     ABC  connection=delta kw=60 customers=1`);
  expect(permitReasonForElement(document, "sw1" as ElementId)).toMatchObject({ key: "permit.load" });
});
