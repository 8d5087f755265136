import { expect, test } from "vitest";
import { checkRule, playedOn, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";

/** What the rule says of the last of some steps. */
const saidOf = (drawing: string, steps: string): string[] =>
  playedOn(drawing, steps)
    .at(-1)!
    .findings.filter((it) => it.rule === "phase-check")
    .flatMap(({ message, help }) => [spell(message), spell(help!)]);

const BOTH = "test p3 A expect live; test p20 A expect live";

checkRule(
  "phase-check",
  "common practice: two supplies are joined only phase to phase and close in angle",
  `${TAP}
  d1 disconnect p3-p20 A open=A
  s2 source p20 A kvLL=12.47
`,
  [
    ["the same phase of another source, tested on both sides", `${BOTH}; close d1`, ""],
    ["tested on one side alone", "test p3 A expect live; close d1", "warning d1"],
    ["not tested", "close d1", "warning d1"],
    ["switched since it was tested", `${BOTH}; open k1; attach k1; close d1`, "warning d1"],
    ["its angle is 30° off", "close d1", "danger d1", "s2 source p20 A kvLL=12.47 angleDeg=30"],
    ["another phase hangs there", "close d1", "danger d1", "s2 source p20 A kvLL=12.47 angleDeg=-120"],
    ["10° off", `${BOTH}; close d1`, "", "s2 source p20 A kvLL=12.47 angleDeg=10"],
    ["dead on one side", "open c1; close d1", "", "s2 source p20 A kvLL=12.47 angleDeg=30"],
    [
      "a station that nothing keeps in step, tested on both sides",
      `${BOTH}; close d1`,
      "danger d1",
      "s2 source p20 A kvLL=12.47 inStep=false",
    ],
    [
      "the same, dropped first",
      `open c1; test p20 A expect live; close d1`,
      "",
      "s2 source p20 A kvLL=12.47 inStep=false",
    ],
  ],
);

checkRule(
  "phase-check",
  "common practice: a splice or a jumper joins two supplies as a switch does",
  `${TAP}
  sp9 span p3-p20 A lengthM=30 parted=A
  s2 source p20 A kvLL=12.47
  w9 work p3 A does=sp9
`,
  [
    [
      "a splice between two phases",
      "work w9 method=sticks",
      "danger sp9",
      "s2 source p20 A kvLL=12.47 angleDeg=-120",
    ],
    [
      "a splice between supplies that nothing keeps in step",
      "work w9 method=sticks",
      "danger sp9",
      "s2 source p20 A kvLL=12.47 inStep=false",
    ],
    [
      "a span that is new there",
      "work w9 method=sticks",
      "danger sp9",
      "s2 source p20 A kvLL=12.47 angleDeg=-120\n sp9 span p3-p20 A lengthM=30 planned=true",
    ],
    ["one in step with it, not tested", "work w9 method=sticks", "warning sp9"],
    ["the same, tested on both sides", `${BOTH}; work w9 method=sticks`, ""],
    ["dead on one side", "open c1; work w9 method=sticks", "", "s2 source p20 A kvLL=12.47 angleDeg=-120"],
  ],
);

checkRule(
  "phase-check",
  "common practice, no source: two splices by one work, with a dead piece between, join what lies at its ends",
  `${TAP}
  sp8 span p3-p19 A lengthM=30 parted=A
  sp9 span p19-p20 A lengthM=30 parted=A
  s2 source p20 A kvLL=12.47 angleDeg=-120
  w9 work p3 A does=sp8,sp9
`,
  [
    ["between two phases", "work w9 method=sticks", "danger sp8"],
    [
      "with a line between that stays whole",
      "work w9 method=sticks",
      "danger sp8",
      "sp9 span p18-p20 A lengthM=30 parted=A\n sp7 span p19-p18 A lengthM=30",
    ],
    [
      "spans that are new there",
      "work w9 method=sticks",
      "danger sp8",
      "sp8 span p3-p19 A lengthM=30 planned=true\n sp9 span p19-p20 A lengthM=30 planned=true",
    ],
    ["one of them alone", "work w9 method=sticks", "", "w9 work p3 A does=sp8"],
    [
      "one alone, to a pole that is new too",
      "work w9 method=sticks",
      "",
      "w9 work p3 A does=sp8\n sp8 span p3-p19 A lengthM=30 planned=true\n sp9 none",
    ],
    [
      "a line between that is parted",
      "work w9 method=sticks",
      "",
      "sp9 span p18-p20 A lengthM=30 parted=A\n sp7 span p19-p18 A lengthM=30 parted=A",
    ],
    ["dead at one end", "open c1; work w9 method=sticks", ""],
  ],
);

checkRule(
  "phase-check",
  "common practice: a customer's machine that runs by itself is in step with nothing, at whatever angle a test finds it",
  `${TAP}
  mn1 main h1-h9 12 open=12
  ld1 load h9 12 kw=3 customers=1
  gx generator h9 12 kva=7 volts=240 on=true
  t1 transformer p5-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240
`,
  [
    [
      "its main closed onto the line",
      "test h1 12 expect live; test h9 12 expect live; close mn1",
      "danger mn1",
    ],
    ["stopped first", "stop gx; close mn1", ""],
  ],
);

checkRule(
  "phase-check",
  "common practice: the cutouts of a bank are closed one by one, and a phase that its delta regenerates is no second supply",
  `
  s1 source p1 ABC kvLL=12.47
  c1 cutout p1-p2 ABC open=A
  t1 transformer p2-p3 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=240
`,
  [["the last cutout of a floating wye bank", "close c1 A", ""]],
);

checkRule(
  "phase-check",
  "common practice: what comes back through a bank and is held down by a failed arrester is no second supply; the fault is told by its own rule",
  `
  s1 source      sub   ABC kvLL=12.47
  c1 cutout      sub-p1 AB fuse=K30 open=B
  la arrester    p1    AB  failed=B
  bk transformer p1-p2 AB  connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240
  ld load        p2    ABC connection=delta kw=18
`,
  [["the cutout of its phase", "close c1 B", ""]],
);

checkRule(
  "phase-check",
  "common practice, no source: two splices with a piece between that a bank holds at some volts join what lies at its ends",
  `
  s1  source      a    ABC kvLL=12.47
  spb span        a-m  B   lengthM=30
  sp8 span        a-m  A   lengthM=30 parted=A
  sp9 span        m-b  A   lengthM=30 parted=A
  bk  transformer m-q  AB  connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240
  ld  load        q    ABC connection=delta kw=18
  r1  lead        a-b  B   toPhases=A
  w1  work        m    A   does=sp8,sp9
`,
  [
    ["between two phases of one source", "work w1 method=sticks", "danger sp8"],
    ["between the ends of one conductor", "work w1 method=sticks", "", "r1 lead a-b A"],
  ],
);

checkRule(
  "phase-check",
  "common practice, no source: two splices with a dead piece between join the line to what stands beyond by other ways",
  `
  s1  source    a0   ABC kvLL=12.47
  c0  cutout    a0-a A   fuse=K65
  sp8 span      a-m  A   lengthM=30 parted=A
  sp9 span      m-b  A   lengthM=30 parted=A
  g9  generator b    A   kva=20 volts=12470 on=true
  w1  work      m    A   does=sp8,sp9
`,
  [
    ["a machine that runs by itself", "work w1 method=sticks", "danger sp8"],
    [
      "a second station, through transformers",
      "work w1 method=sticks",
      "danger sp8",
      `g9 none
       s2 source z ABC kvLL=12.47 inStep=false
       t2 transformer z-q A connection=single kva=50 primaryKv=7.2 secondaryV=240
       t3 transformer b-q A connection=single kva=50 primaryKv=7.2 secondaryV=240`,
    ],
    ["nothing runs beyond", "work w1 method=sticks", "", "g9 none"],
  ],
);

checkRule(
  "phase-check",
  "common practice, no source: a transformer that is put in joins what stands at its two sides",
  `${TAP}
  t9 transformer p20-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
  s2 source p20 A kvLL=12.47 inStep=false
  w9 work p20 A does=t9
`,
  [
    ["two stations that nothing keeps in step", "work w9 method=sticks", "danger t9"],
    ["dead on one side", "open c1; work w9 method=sticks", ""],
    [
      "one station, and another of its phases",
      "work w9 method=sticks",
      "danger t9",
      `s2 none
       x9 lead p1-p20 B
       t9 transformer p20-p6 B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
       w9 work p20 B does=t9`,
    ],
    [
      "the same phase by legs of other volts",
      "work w9 method=sticks",
      "danger t9",
      `s2 none
       x9 lead p1-p20 A
       t9 transformer p20-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=480 planned=true`,
    ],
    [
      "the same phase at the same volts",
      "work w9 method=sticks",
      "",
      `s2 none
       x9 lead p1-p20 A`,
    ],
  ],
);

checkRule(
  "phase-check",
  "common practice: both ends of a bypass or a jumper are one conductor, which asks for no phasing",
  `
  s1 source p1 ABC kvLL=12.47
  r1 recloser p1-p2 ABC
  by disconnect p1-p2 ABC gang=true open=ABC
  sp1 span p2-p3 ABC
  sp2 span p1-p4 ABC
  d1 disconnect p3-p4 ABC gang=true open=ABC
`,
  [
    ["a bypass", "close by", ""],
    ["a ring of one feeder, over lengths of line", "close d1", "warning d1"],
    ["the same, tested", "test p3 ABC expect live; test p4 ABC expect live; close d1", ""],
    ["dead on one side", "open r1; close d1", ""],
  ],
);

/** A bank and, beside it, an open switch between its two voltages. */
const TWO_VOLTAGES = `
  s1  source      p1     ABC  kvLL=12.47
  t1  transformer p1-p2  ABC  connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=4160
  sp1 span        p1-p3  ABC
  d1  disconnect  p3-p2  ABC  gang=true open=ABC
`;

checkRule("phase-check", "common practice: what is closed between two voltages is a short", TWO_VOLTAGES, [
  [
    "a bank that gives the line's own volts",
    "test p3 ABC expect live; test p2 ABC expect live; close d1 ABC",
    "",
    "t1 transformer p1-p2 ABC connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=12470",
  ],
  ["one side of a bank onto the other", "close d1 ABC", "danger d1"],
  [
    "however well it was tested",
    "test p3 ABC expect live; test p2 ABC expect live; close d1 ABC",
    "danger d1",
  ],
]);

/** Two stations that nothing keeps in step, at some angle, and a bank of the first. */
const twoStations = (angleDeg: number) => `
  s1 source p0 ABC kvLL=12.47
  s2 source r0 ABC kvLL=12.47 inStep=false angleDeg=${angleDeg}
  t1 transformer r0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240
  d1 disconnect p0-r0 A open=A
  t9 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
  w9 work p0 A does=t9
`;

/** Two banks on other phases, the second to a house of its own, until a lead of the same work joins their legs. */
const BANK_AND_LEAD = `
  s1 source p0 ABC kvLL=12.47
  t1 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240
  t9 transformer p0-q9 B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
  j9 lead q9-q 12 planned=true
  ld load q 12 connection=delta kw=5 customers=2
  w9 work p0 B does=t9,j9
`;

checkRule(
  "phase-check",
  "common practice, no source: a transformer and its lead by one work join what stands at their far ends",
  BANK_AND_LEAD,
  [
    ["another phase", "work w9 method=sticks", "danger j9"],
    ["the lead was cut", "work w9 method=sticks", "danger j9", "j9 lead q9-q 12 cut=12"],
    [
      "the lead is on the side of the primary",
      "work w9 method=sticks",
      "danger t9",
      `j9 lead p0-p9 B planned=true
       t9 transformer p9-q B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true`,
    ],
    [
      "the same phase",
      "work w9 method=sticks",
      "",
      `t9 transformer p0-q9 A connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
       w9 work p0 A does=t9,j9`,
    ],
    ["the transformer alone", "work w9 method=sticks", "", "w9 work p0 B does=t9"],
    [
      "a station that nothing keeps in step",
      "work w9 method=sticks",
      "danger j9",
      `s2 source r0 ABC kvLL=12.47 inStep=false
       t1 transformer r0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240`,
    ],
    [
      "a machine that runs by itself",
      "work w9 method=sticks",
      "danger j9",
      `t1 none
       gx generator q 12 kva=7 volts=240 on=true`,
    ],
    [
      "a machine that runs by itself, and no lead",
      "work w9 method=sticks",
      "danger t9",
      `t1 none
       j9 none
       t9 transformer p0-q B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
       gx generator q 12 kva=7 volts=240 on=true
       w9 work p0 B does=t9`,
    ],
    ["nothing runs there", "work w9 method=sticks", "", "t1 none"],
  ],
);

/** Two transformers by one work beside one that stands, the first of them on another phase. */
const TWO_BANKS = `
  s1 source p0 ABC kvLL=12.47
  t1 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240
  t9 transformer p0-q B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
  t8 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
  w9 work p0 AB does=t8,t9
`;

checkRule(
  "phase-check",
  "common practice, no source: of several that one work puts in, the one is told that is on another phase",
  TWO_BANKS,
  [
    ["the later one on the way from the source", "work w9 method=sticks", "danger t9"],
    [
      "the first one on the way from the source",
      "work w9 method=sticks",
      "danger t9",
      `t1 transformer p0-q B connection=single kva=25 primaryKv=7.2 secondaryV=240
       t9 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true
       t8 transformer p0-q B connection=single kva=25 primaryKv=7.2 secondaryV=240 planned=true`,
    ],
  ],
);

test("volts of legs stand on a leg, and degrees are whole ones", () => {
  const other = "t9 transformer p0-q A connection=single kva=25 primaryKv=7.2 secondaryV=480 planned=true";
  expect(saidOf(TWO_BANKS, "work w9 method=sticks")[0]).toContain("on leg 1 that stand 120° and 208 V apart");
  expect(saidOf(`${TWO_BANKS}\n${other}`, "work w9 method=sticks")[0]).toContain("stand 0° and 120 V apart");
});

test.each(["close d1", "work w9 method=sticks"])(
  "where the rule tells two stations out of step, something happens: %s",
  (steps) =>
    expect(playedOn(twoStations(5), steps).at(-1)!.consequence).toMatchObject({
      kind: "fault",
      text: { key: "consequence.notInStep" },
    }),
);

test("what can stand between two stations is told at one side of a transformer", () => {
  expect(saidOf(twoStations(0), "work w9 method=sticks")[0]).toContain("up to 240 V can stand");
  expect(saidOf(twoStations(0), "close d1")[0]).toContain("up to 14399 V can stand");
});

test.each([
  ["a switch", 0, "close d1"],
  ["a switch, whatever angle they stand at now", 40, "close d1"],
  ["a bank that is put in", 0, "work w9 method=sticks"],
  ["a bank that is put in, whatever angle they stand at now", 40, "work w9 method=sticks"],
])("no phasing set is sent for where nothing keeps two stations in step: %s", (_why, angleDeg, steps) => {
  const [message, help] = saidOf(twoStations(angleDeg), steps);
  expect(message).toContain("which nothing keeps in step");
  expect(help).toContain("take one of the two off first");
});
