import { describe, expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll } from "../../../../tests/support/jobNotation";
import { findingsAtEnd } from ".";

const BANK = `
  s1   source       sub    ABC  kvLL=12.47
  main span         sub-p1 ABC  lengthM=2000
  c1   cutout       p1-p2  ABC  fuse=K15
  t1   transformer  p2-p3  ABC  connection=D-Yg kva=75 primaryKv=12.47 secondaryV=480
`;

const found = (steps: string): string[] =>
  findingsAtEnd(playAll(draw(BANK), parseSteps(steps, [])).at(-1)!.state)
    .filter((it) => it.rule === "phase-missing")
    .map((it) => `${it.severity} ${it.where}`);

describe("phase-missing: common practice, no source: no bank is left with a phase missing", () => {
  test.each([
    ["one pole left open", "open c1 ABC; close c1 AB", ["danger t1"]],
    ["two poles left open", "open c1 ABC; close c1 A", ["danger t1"]],
    ["all of it left open", "open c1 ABC", []],
    ["all of it closed", "open c1 ABC; close c1 ABC", []],
  ])("%s", (_why, steps, wanted) => expect(found(steps)).toEqual(wanted));
});

checkRule(
  "phase-missing",
  "common practice, no source: no customer is put onto a bank with a phase missing",
  `${BANK}
  m1   meter        p3-h1  ABC
  mn   main         h1-h2  ABC
  ld1  load         h2     ABC  connection=delta kw=30 customers=1
  h1   point        kind=service
  h2   point        kind=service
`,
  [
    ["the main goes in while one pole is open", "open mn; open c1 C; close mn", "danger t1"],
    ["the meter, with the main in", "open c1 ABC; pull m1; close c1 AB; replace m1", "danger t1"],
    [
      "the meter with the main out, so that nothing hangs on it",
      "open mn; open c1 ABC; pull m1; close c1 AB; replace m1",
      "",
    ],
    ["the main with all of them closed", "open mn; open c1 C; close c1 C; close mn", ""],
    ["the main with all of them open", "open mn; open c1 ABC; close mn", ""],
    ["a pole of the cutout is no customer's", "open c1 ABC; close c1 A", ""],
  ],
);

checkRule(
  "phase-missing",
  "common practice, no source: a switch that has gone all the way leaves no bank on fewer phases",
  `
  s1   source       sub    ABC  kvLL=12.47
  main span         sub-p1 ABC  lengthM=2000
  sw1  disconnect   p1-p2  ABC  loadBreakAmps=600
  sw2  disconnect   p1-p2  ABC  loadBreakAmps=600 open=C
  t1   transformer  p2-p3  ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=480
  ld1  load         p3     ABC  connection=wye kw=30 customers=1
`,
  [
    ["the other way has two phases", "open sw1 ABC", "danger t1"],
    ["pole by pole, with the last one", "open sw1 A; open sw1 B; open sw1 C", "danger t1"],
    ["a pole of it, with the others to come", "open sw1 C", ""],
    ["the other way has all three", "open sw1 ABC", "", "sw2 disconnect p1-p2 ABC loadBreakAmps=600"],
    ["nothing else feeds it", "open sw1 ABC", "", "sw2 none"],
    [
      "leads cut with their neutral",
      "cut l1 ABCN with lead-cutters",
      "danger t1",
      "sw1 none\nl1 lead p1-p2 ABC",
    ],
    ["nothing hangs on it", "open sw1 ABC", "", "ld1 none"],
  ],
);

checkRule(
  "phase-missing",
  "common practice, no source: a switch that has gone all the way puts no customer onto a bank with a phase missing",
  `
  s1   source       sub    ABC  kvLL=12.47
  rc   recloser     sub-p1 ABC  open=ABC
  c1   cutout       p1-p2  ABC  fuse=K40
  t1   transformer  p2-p3  ABC  connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=480
  sw3  disconnect   p3-p4  ABC  gang=true loadBreakAmps=600
  ld1  load         p4     ABC  connection=wye kw=30 customers=1
`,
  [
    ["a cutout beyond it has a pole open", "open c1 C; close rc", "danger t1"],
    ["all of them closed", "close rc", ""],
    ["nothing hangs on the bank yet", "open sw3; open c1 C; close rc", ""],
    [
      "the low side's switch, the bank on two phases",
      "open sw3; open c1 C; close rc; close sw3",
      "danger t1",
    ],
    ["pole by pole, before the last one", "open c1 ABC; close rc; close c1 AB", ""],
  ],
);

checkRule(
  "phase-missing",
  "Kirchhoff: one phase at earth leaves the volts between the phases of an unearthed line whole, and a bank without them on an earthed one",
  `
  s1   source       sub    ABC  kvLL=4.8 earthed=false
  m0   span         sub-p1 ABC  neutral=false lengthM=500
  c1   cutout       p1-p2  ABC  fuse=K30 neutral=false open=ABC
  f1   fault        p2     B    to=earth ohms=5
  t1   transformer  p2-p3  AB   connection=single kva=25 primaryKv=4.8 secondaryV=240
  ld1  load         p3     12   connection=delta kw=5 customers=3
`,
  [
    ["its two phases have their volts", "close c1", ""],
    [
      "the one at earth is open beyond the switch",
      "close c1",
      "danger t1",
      `c1 cutout p1-p11 ABC fuse=K30 neutral=false open=ABC
      c2 cutout p11-p2 ABC fuse=K30 neutral=false open=B`,
    ],
    [
      "the same line earthed at its source, the fault short enough to take the volts",
      "close c1",
      "danger t1",
      `s1 source sub ABC kvLL=4.8
      f1 fault p2 B to=neutral ohms=0.01
      m0 span sub-p1 ABC lengthM=500
      c1 cutout p1-p2 ABC fuse=K30 open=ABC`,
    ],
    [
      "a winding to the neutral at the faulted phase",
      "close c1",
      "danger t1",
      `t1 transformer p2-p3 AB connection=openY-openD kva=50 primaryKv=4.8 secondaryV=240
      ld1 load p3 AB connection=delta kw=5 customers=3`,
    ],
  ],
);
