import { describe, expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import type { StillhotDocument } from "../../document";
import { rehearse } from "../rehearsal/rehearse";
import { plan, planDocument } from ".";

const LINE = `
  s1    source       sub     ABC  kvLL=12.47
  main  span         sub-p1  ABC  lengthM=2000
`;
const house = (n: number, at: string, phase = "A"): string => `
  x${n}   cutout       ${at}-${at}b${n}     ${phase}  fuse=K10
  t${n}   transformer  ${at}b${n}-${at}s${n}  ${phase}  connection=single kva=25 primaryKv=7.2 secondaryV=240
  m${n}   meter        ${at}s${n}-h${n}  12 count=3
  ld${n}  load         h${n}  12 connection=delta kw=9 customers=3
  h${n}   point        kind=service
`;
const OTHER_STATION = `
  far  span    q5-sub2  ABC  lengthM=3000
  s2   source  sub2     ABC  kvLL=12.47
`;

/** Half of a loop with a cable parked at both ends, and the pad behind it fed from the far side by what is open in service. */
const PARKED = (far: string): string => `${LINE}
     ca   cutout       p1-ra  A  fuse=K65
     u1   span         ra-a1  A  construction=cable lengthM=120
     ea1  elbow        a1-a   A
     ta   transformer  a-sa   A  connection=single kva=50 primaryKv=7.2 secondaryV=240
     lda  load         sa     12 connection=delta kw=12 customers=5
     ea2  elbow        a-a2   A  open=A
     u2   span         a2-x   A  construction=cable lengthM=70
     f1   fault        x      A
     u3   span         x-b1   A  construction=cable lengthM=50
     eb1  elbow        b1-b   A  open=A
     tb   transformer  b-sb   A  connection=single kva=50 primaryKv=7.2 secondaryV=240
     ldb  load         sb     12 connection=delta kw=12 customers=6
     eb2  elbow        b-b2   A  normallyOpen=true
     ${far}
     ${["a", "a1", "a2", "sa", "x", "b", "b1", "b2", "sb"].map((it) => `${it} point kind=pad`).join("\n     ")}
     w1   work         x      A  does=f1,u2,u3`;

/**
 * What a foreman expects of everyday jobs, written before they were planned: what is opened and fed before the work, what
 * is moved after it, and how many customers are without supply while it goes on and at the end. Common practice, no source.
 */
const JOBS: readonly (readonly [
  why: string,
  drawing: string,
  before: string,
  after: string,
  during: number,
  end: number,
])[] = [
  [
    "a burned clamp is lifted after the cutout below it has dropped the load",
    `${LINE}
     k1   clamp   p1-p2  A  condition=burned
     c1   cutout  p2-p3  A  fuse=K25
     sp1  span    p3-p4  A  lengthM=60
     ${house(1, "p4")} ${house(2, "p4")}
     w1   work    p2     A  does=k1`,
    "open c1 A; lift k1 A",
    "attach k1 A; close c1 A",
    6,
    0,
  ],
  [
    "a cutout is changed with both its terminals dead",
    `${LINE}
     d0   disconnect  p1-p2  ABC  gang=true loadBreakAmps=400
     c1   cutout      p2-p3  A    fuse=K25
     sp1  span        p3-p4  A    lengthM=60
     ${house(1, "p4")}
     w1   work        p3     A    does=c1`,
    "barricade p3; open d0",
    "close d0",
    3,
    0,
  ],
  [
    "a wire is down: guarded first, cut off on both sides, the far side fed by the tie, and the house's machine not started",
    `${LINE}
     c1   cutout      p1-p2  A  fuse=K25 blown=A
     sp1  span        p2-p3  A  lengthM=60 parted=A
     d1   disconnect  p3-p4  A  loadBreakAmps=100
     sp2  span        p4-p5  A  lengthM=60
     ${house(1, "p5")} ${house(2, "p3")}
     g2   generator   h2     12 kva=7 volts=240 on=true
     tie  disconnect  p5-q5  A  open=A normallyOpen=true loadBreakAmps=100
     ${OTHER_STATION}
     w1   work        p3     A  does=sp1`,
    "barricade p3; barricade p2; open d1 A; open x2 A; close tie A",
    "refuse c1 A; close c1 A; stop g2; open tie A; close d1 A; close x2 A",
    3,
    0,
  ],
  [
    "a pump's floating bank with a blown link is never left with a phase missing",
    `${LINE}
     c1   cutout       p1-p3  ABC  fuse=K12 blown=B
     t1   transformer  p3-p4  ABC  connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
     mb   main         p4-h1  ABC  neutral=false
     ld1  load         h1     ABC  connection=delta kw=70 customers=1
     h1   point        kind=service
     w1   work         p3     ABC  does=c1`,
    "barricade p3; open c1 AC; open mb",
    "close c1 ABC; close mb",
    1,
    0,
  ],
  [
    "an insulator in the middle of a line: the far end is fed from the other station meanwhile, break before make",
    `${LINE}
     d1   disconnect  p1-p2  ABC  gang=true loadBreakAmps=400
     sp1  span        p2-p3  ABC  lengthM=200
     d2   disconnect  p3-p4  ABC  gang=true loadBreakAmps=400
     sp2  span        p4-p5  ABC  lengthM=200
     ${house(1, "p5")} ${house(2, "p3", "B")}
     tie  disconnect  p5-q5  ABC  gang=true open=ABC normallyOpen=true loadBreakAmps=400
     ${OTHER_STATION}
     w1   work        p3     ABC`,
    "open d1; barricade p3; open d2; close tie",
    "close d1; open tie; close d2",
    3,
    0,
  ],
  [
    "a switch between two feeders is changed with both of its sides dead",
    `${LINE}
     d1   disconnect  p1-p2  ABC  gang=true loadBreakAmps=400
     sp1  span        p2-p3  ABC  lengthM=200
     sw   disconnect  p3-p4  ABC  gang=true open=ABC normallyOpen=true
     sp2  span        p4-p5  ABC  lengthM=200
     d2   disconnect  p5-q5  ABC  gang=true loadBreakAmps=400
     ${OTHER_STATION}
     ${house(1, "p2")} ${house(2, "p5", "B")}
     w1   work        p3     ABC  does=sw`,
    "open d1; open d2; barricade p3",
    "close d1; close d2",
    6,
    0,
  ],
  [
    "of two transformers on one secondary the one with the blown link is changed, and its link renewed",
    `${LINE}
     ${house(1, "p1")} ${house(2, "p1")}
     sx   span    p1s1-p1s2  12  lengthM=60 construction=secondary
     x1   cutout  p1-p1b1    A   fuse=K10 blown=A
     w1   work    p1b1       A   does=t1`,
    "barricade p1b1; open x2 A",
    "close x2 A; refuse x1 A; close x1 A",
    6,
    0,
  ],
  [
    "a regulator is run to neutral, bypassed and only then switched out; nobody is without supply",
    `${LINE}
     d1   disconnect  p1-p2  ABC
     vr1  regulator   p2-p3  ABC  taps={"A":5,"B":3,"C":4}
     d2   disconnect  p3-p4  ABC
     by   disconnect  p1-p4  ABC  open=ABC normallyOpen=true
     sp2  span        p4-p5  ABC  lengthM=800
     ${house(1, "p5")} ${house(2, "p5", "B")}
     w1   work        p3     ABC  does=vr1`,
    "barricade p3; set-position vr1; block vr1; close by ABC; open d1 ABC; open d2 ABC",
    "close d1 ABC; close d2 ABC; open by ABC; unblock vr1",
    0,
    0,
  ],
  [
    "a cutout of a floating bank is changed with its clamps lifted: it drops what the bank draws by itself first",
    `${LINE}
     k1   clamp        p1-p2  ABC
     c1   cutout       p2-p3  ABC  fuse=K12
     t1   transformer  p3-p4  ABC  connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
     m1   meter        p4-h1  ABC  neutral=false
     ld1  load         h1     ABC  connection=delta kw=70 kvar=45 customers=1
     h1   point        kind=service
     w1   work         p3     B    does=c1`,
    "open c1 ABC; lift k1 ABC; pull m1",
    "replace m1; attach k1 ABC; close c1 ABC",
    1,
    0,
  ],
  [
    "a clamp that has nothing but cutouts beyond it: those drop the load, and nobody ahead of it is without supply",
    `${LINE}
     rc   recloser  p1-q1  ABC
     mx   span      q1-q2  ABC  lengthM=900
     ldm  load      q2     ABC  kw=150 customers=44
     k1   clamp     q2-p3  A    condition=burned
     sp1  span      p3-p4  A    lengthM=80
     ${house(1, "p4")}
     sp2  span      p4-p5  A    lengthM=80
     ${house(2, "p5")}
     w1   work      p3     A    does=k1`,
    "open x1 A; open x2 A; lift k1 A",
    "attach k1 A; close x1 A; close x2 A",
    6,
    0,
  ],
  [
    "a pad in a loop is changed with what cuts it off beyond it, and the pad behind it fed from the other side",
    `${LINE}
     ca   cutout       p1-ra  A  fuse=K65
     u1   span         ra-a1  A  construction=cable lengthM=120
     ea1  elbow        a1-a   A
     ta   transformer  a-sa   A  connection=single kva=50 primaryKv=7.2 secondaryV=240
     lda  load         sa     12 connection=delta kw=12 customers=5
     ea2  elbow        a-a2   A
     u2   span         a2-b1  A  construction=cable lengthM=120
     eb1  elbow        b1-b   A
     tb   transformer  b-sb   A  connection=single kva=50 primaryKv=7.2 secondaryV=240
     ldb  load         sb     12 connection=delta kw=12 customers=6
     eb2  elbow        b-b2   A  open=A normallyOpen=true
     u3   span         b2-rb  A  construction=cable lengthM=130
     cb   cutout       p1-rb  A  fuse=K65
     ${["a", "a1", "a2", "sa", "b", "b1", "b2", "sb"].map((it) => `${it} point kind=pad`).join("\n     ")}
     w1   work         a      A  does=ta`,
    "close eb2 A; open ca A; open eb1 A; barricade a",
    "close ca A; close eb1 A; open eb2 A",
    5,
    0,
  ],
  [
    "a ring that one station feeds at both ends: its open point closes first, and opens last; nobody blinks",
    `${LINE}
     d1   disconnect  p1-q1   ABC  gang=true loadBreakAmps=400
     r1   span        q1-a2   ABC  lengthM=300
     swa  disconnect  a2-a3   ABC  gang=true loadBreakAmps=400
     r2   span        a3-a4   ABC  lengthM=300
     ld1  load        a4      ABC  kw=300 customers=40
     d2   disconnect  p1-q2   ABC  gang=true loadBreakAmps=400
     r3   span        q2-b2   ABC  lengthM=300
     ld2  load        b2      ABC  kw=300 customers=40
     tie  disconnect  a4-b2   ABC  gang=true open=ABC normallyOpen=true loadBreakAmps=400
     w1   work        a2      ABC`,
    "close tie; open d1; barricade a2; open swa",
    "close swa; close d1; open tie",
    0,
    0,
  ],
  [
    "one of two transformers on a street, where a house is dark all along: its cutout closes before its legs are joined",
    `${LINE}
     sp1  span         p1-p2   A   lengthM=50
     x1   cutout       p2-p2a  A   fuse=K15
     t1   transformer  p2a-q2a A   connection=single kva=50 primaryKv=7.2 secondaryV=240
     j1   lead         q2a-q2  12
     x3   cutout       p1-p1a  A   fuse=K15
     t2   transformer  p1a-q4  A   connection=single kva=50 primaryKv=7.2 secondaryV=240
     st   span         q2-q4   12  lengthM=50 construction=secondary
     l2   load         q2      12  connection=delta kw=10 customers=5
     l4   load         q4      12  connection=delta kw=10 customers=5
     m9   main         q4-h9   12  open=12 normallyOpen=true
     l9   load         h9      12  connection=delta kw=3 customers=1
     h9   point        kind=service
     w1   work         p2a     A   does=t1`,
    "barricade p2a; cut j1 12; open x1 A",
    "close x1 A; join j1 12",
    1,
    1,
  ],
  [
    "a loop that was opened for a bad cable: the usual way closes before the far side lets go",
    PARKED("u4 span b2-rb A construction=cable lengthM=130\ncb cutout p1-rb A fuse=K65"),
    "",
    "close ea2 A; close eb1 A; open eb2 A",
    0,
    0,
  ],
  [
    "the same between two stations: the far one lets go before the usual way closes",
    PARKED(
      "u4 span b2-q5 A construction=cable lengthM=130\nfar span q5-sub2 ABC lengthM=3000\ns2 source sub2 ABC kvLL=12.47",
    ),
    "",
    "close ea2 A; open eb2 A; close eb1 A",
    0,
    0,
  ],
  [
    "a tie to the same station whose ring holds a regulator off neutral is opened before it closes",
    `${LINE}
     d1   disconnect  p1-q1   ABC  gang=true loadBreakAmps=400
     vr   regulator   q1-q9   ABC  taps={"A":9,"B":9,"C":9}
     r1   span        q9-a2   ABC  lengthM=300
     swa  disconnect  a2-a3   ABC  gang=true loadBreakAmps=400
     r2   span        a3-a4   ABC  lengthM=300
     ld1  load        a4      ABC  kw=300 customers=40
     d2   disconnect  p1-q2   ABC  gang=true loadBreakAmps=400
     r3   span        q2-b2   ABC  lengthM=300
     tie  disconnect  a4-b2   ABC  gang=true open=ABC normallyOpen=true loadBreakAmps=400
     w1   work        a2      ABC`,
    "open d1; barricade a2; open swa; close tie",
    "close d1; open tie; close swa",
    0,
    0,
  ],
  [
    "the same where cutouts open it: both sides are tested, and only then one stands clear",
    `${LINE}
     c1   cutout      p1-p2  A    fuse=K40
     sp1  span        p2-p3  A    lengthM=100
     x1   cutout      p3-p6  A    fuse=K10
     ld1  load        p3     A    kw=20 customers=5
     sw   disconnect  p3-p4  A    loadBreakAmps=200
     sp2  span        p4-p5  A    lengthM=100
     ld2  load        p5     A    kw=20 customers=5
     c2   cutout      p5-q1  A    fuse=K40 open=A normallyOpen=true
     lat  span        p1-q1  ABC  lengthM=300
     w1   work        p3     A    does=x1`,
    "close c2 A; open c1 A; barricade p3; open sw A",
    "close sw A; close c1 A; open c2 A",
    5,
    0,
  ],
  [
    "what another crew has tagged stays open, and who is dark behind it is counted",
    `${LINE}
     c1   cutout    p1-p2  A  fuse=K25
     sp1  span      p2-p3  A  lengthM=60
     ${house(1, "p3")}
     c9   cutout    p3-p9  A  fuse=K25 open=A tagged=true
     ${house(2, "p9")}
     a1   arrester  p3     A
     w1   work      p3     A  does=a1`,
    "open c1 A; barricade p3",
    "close c1 A",
    6,
    3,
  ],
];

const MOVES: readonly string[] = [
  ...["open", "lift", "cut", "pull", "stop", "close", "attach", "join", "replace", "start"],
  ...["refuse", "barricade"],
];

function movesOf(document: StillhotDocument) {
  const { steps } = plan(document, { alternatives: false });
  const work = steps.findIndex((it) => it.do === "work");
  const told = (some: typeof steps): string =>
    some
      .filter((it) => MOVES.includes(it.do) || it.element === "vr1")
      .map((it) => {
        const { element, at, phases } = it as { element?: string; at?: string; phases?: string };
        return [it.do, element ?? at, phases].filter((word) => word !== undefined).join(" ");
      })
      .join("; ");
  const tests = steps.findIndex((it) => it.do === "check-detector");
  return { before: told(steps.slice(0, tests)), after: told(steps.slice(work)) };
}

describe("everyday jobs are planned as a foreman would", () => {
  test.each(JOBS)("%s", (_why, drawing, before, after, during, end) => {
    const document = draw(drawing);
    expect(movesOf(document)).toEqual({ before, after });
    const planned = plan(document);
    expect(planned.findings.map(({ rule, where }) => `${rule} ${where}`)).toEqual([]);
    expect(planned.customers).toMatchObject({ during, end });
    expect(rehearse(planDocument(document)).ok).toBe(true);
  });
});

test("where a ring feeds everybody meanwhile nobody is without supply for a moment, and both sides are tested before it closes", () => {
  const ring = JOBS.find(([why]) => why.startsWith("a ring that one station"))!;
  const { customers, steps } = plan(draw(ring[1]), { alternatives: false });
  expect(customers).toEqual({ asFound: 0, during: 0, worst: 0, end: 0, steps: 0 });
  const tie = steps.findIndex((it) => it.element === "tie");
  expect(
    steps.slice(tie - 2, tie + 1).map((it) => [it.do, it.at ?? it.element, it.expect].join(" ")),
  ).toEqual(["test a4 live", "test b2 live", "close tie "]);
});

test("a loop fed from its far side goes back with nobody dark, and both sides are tested before it closes", () => {
  const parked = JOBS.find(([why]) => why.startsWith("a loop that was opened"))!;
  const { customers, steps } = plan(draw(parked[1]), { alternatives: false });
  expect(customers).toEqual({ asFound: 0, during: 0, worst: 0, end: 0, steps: 0 });
  const closed = steps.findIndex((it) => it.do === "close" && it.element === "eb1");
  expect(
    steps.slice(closed - 2, closed).map((it) => [it.do, it.at ?? it.element, it.expect].join(" ")),
  ).toEqual(["test b1 live", "test b live"]);
});

test("no customer is put back onto a bank before the link of its last phase is renewed", () => {
  const { steps, ok } = plan(
    draw(`${LINE}
     c1   cutout       p1-p3  ABC  fuse=K12 blown=B
     t1   transformer  p3-p4  ABC  connection=Y-D kva=75 primaryKv=12.47 secondaryV=480
     mb   main         p4-h1  ABC  neutral=false
     ld1  load         h1     ABC  connection=delta kw=40 customers=1
     h1   point        kind=service
     w1   work         p3     ABC  does=t1`),
    { alternatives: false },
  );
  const at = (verb: string, element: string) =>
    steps.findLastIndex((it) => it.do === verb && it.element === element);
  expect(ok).toBe(true);
  expect(at("close", "mb")).toBeGreaterThan(at("close", "c1"));
});

/** A motor found short of a phase on a bank of three cutouts, behind some switches. */
const MOTOR = (beyond: string, does = "la"): string => `${LINE}
     c1   cutout       p1-p3  ABC  fuse=K12 blown=B
     t1   transformer  p3-p4  ABC  connection=Y-D kva=75 primaryKv=12.47 secondaryV=480
     ${beyond}
     ld1  load         h1     ABC  connection=delta kw=40 customers=1
     h1   point        kind=service
     la   arrester     p3     ABC  failed=B
     w1   work         p3     ABC  does=${does}`;

describe("every phase is read before a motor goes on again that was found short of one", () => {
  test.each([
    ["at its main", MOTOR("mb main p4-h1 ABC neutral=false"), "mb", "p4"],
    [
      "at its main behind a meter",
      MOTOR("m1 meter p4-p5 ABC neutral=false\nmb main p5-h1 ABC neutral=false"),
      "mb",
      "p5",
    ],
    [
      "once, where the bank was changed and its volts are read anyway",
      MOTOR("mb main p4-h1 ABC neutral=false", "la,t1"),
      "mb",
      "p4",
    ],
    [
      "at the switch behind which its main stays closed",
      MOTOR("m1 meter p4-h1 ABC neutral=false\nsw disconnect p0-p1 ABC gang=true loadBreakAmps=400").replace(
        "sub-p1",
        "sub-p0",
      ),
      "sw",
      "p0",
    ],
  ])("%s", (_why, drawing, element, at) => {
    const { steps } = plan(draw(drawing), { alternatives: false });
    const closed = steps.findLastIndex((it) => it.do === "close" && it.element === element);
    expect(closed).toBeGreaterThan(0);
    const before = steps
      .slice(0, closed)
      .filter(({ do: verb }) => !["untag", "unblock", "stand-clear"].includes(verb));
    expect(before.at(-1)).toMatchObject({ do: "test", at, phases: "ABC", expect: "live" });
    expect(steps.filter((it) => it.do === "test" && it.expect === "live")).toHaveLength(1);
  });

  test("of three cutouts with a handle each, all that they hang on is read before the first", () => {
    const { steps } = plan(
      draw(
        MOTOR("m1 meter p4-h1 ABC neutral=false")
          .replace("Y-D", "Yg-Yg")
          .replace(
            /c1 .*/,
            "ca cutout p1-p3 A fuse=K12\ncb cutout p1-p3 B fuse=K12 blown=B\ncc cutout p1-p3 C fuse=K12",
          ),
      ),
      { alternatives: false },
    );
    const read = steps.filter((it) => it.do === "test" && it.expect === "live");
    expect(read.length).toBeGreaterThan(0);
    for (const it of read) expect(it).toMatchObject({ at: "p1", phases: "ABC" });
  });

  test("and what has no volts yet is not asked for any", () => {
    const { steps } = plan(draw(MOTOR("m1 meter p4-p5 ABC neutral=false\nmb main p5-h1 ABC neutral=false")));
    const read = steps.filter((it) => it.do === "test" && it.expect === "live").map(({ at }) => at);
    expect(read).toEqual(["p5"]);
  });
});

test("pads that were dark before the crew came are tested dead before an elbow feeds them at arm's length", () => {
  const { steps, ok } = plan(
    draw(`${PARKED(`u4 span b2-d1 A construction=cable lengthM=100
     ed1  elbow        d1-d   A
     td   transformer  d-sd   A  connection=single kva=50 primaryKv=7.2 secondaryV=240
     ldd  load         sd     12 connection=delta kw=12 customers=7
     ed2  elbow        d-d2   A  open=A normallyOpen=true
     u5   span         d2-rb  A  construction=cable lengthM=100
     cb   cutout       p1-rb  A  fuse=K65
     d point kind=pad
     d1 point kind=pad
     d2 point kind=pad
     sd point kind=pad`)}
     eb2  elbow        b-b2   A`),
    { alternatives: false },
  );
  expect(ok).toBe(true);
  const closed = steps.findIndex((it) => it.do === "close" && it.element === "ed2");
  expect(steps.slice(closed - 3, closed)).toMatchObject([
    { do: "check-detector" },
    { do: "test", at: "d", phases: "A" },
    { do: "check-detector" },
  ]);
  expect(steps[closed - 2]).not.toHaveProperty("expect");
  // What the work was on was tested for that, and what is live is read for its phase.
  const others = steps
    .filter((it) => it.do === "test" && it.at !== "d")
    .map((it) => [it.at, it.with, it.expect]);
  expect(others).toEqual([
    ["b1", undefined, undefined],
    ["a2", undefined, undefined],
    ["x", "spike", undefined],
    ["b1", undefined, "live"],
    ["b", undefined, "live"],
  ]);
});

test("cutouts that close on one pole ask for one word to stand clear, and their tags come off before it", () => {
  const { steps } = plan(
    draw(`${LINE}
     ca   cutout    p1-p2  A    fuse=K40
     cb   cutout    p1-p2  B    fuse=K40
     cc   cutout    p1-p2  C    fuse=K40
     sp1  span      p2-p3  ABC  lengthM=100
     la   arrester  p3     ABC
     ld1  load      p3     ABC  kw=60 customers=5 connection=wye
     w1   work      p3     ABC  does=la`),
    { alternatives: false },
  );
  const released = steps.findIndex((it) => it.do === "release-permit");
  expect(steps.slice(released + 1).map((it) => [it.do, it.element].join(" ").trim())).toEqual([
    ...["untag ca", "untag cb", "untag cc", "stand-clear"],
    ...["close ca", "close cb", "close cc"],
  ]);
});

test("both sides of a thing that comes out of the line are tested and grounded, each by a set of its own", () => {
  const regulator = JOBS.find(([why]) => why.startsWith("a regulator"))!;
  const { steps } = plan(draw(regulator[1]), { alternatives: false });
  for (const verb of ["test", "ground"] as const)
    expect(
      steps
        .filter((it) => it.do === verb)
        .map(({ at }) => at)
        .sort(),
    ).toEqual(["p2", "p3"]);
});

test("the volts of a changed transformer are read right after it is energized, and only of such a one", () => {
  const drawing = (does: string) => `${LINE}
     ${house(1, "p1")}
     w1   work    p1b1       A${does}`;
  const lastOf = (does: string) => plan(draw(drawing(does))).steps.slice(-2);
  expect(lastOf("   does=t1")).toMatchObject([
    { do: "close", element: "x1" },
    { do: "test", at: "p1s1", phases: "12", expect: "live" },
  ]);
  expect(lastOf("").map((it) => it.do)).not.toContain("test");
});

test.each([
  ["without a by-pass, the plan says that its load goes with it", "", 1],
  ["with one, the line is carried past it", "by disconnect p1-p4 ABC open=ABC normallyOpen=true", 0],
])("a regulator %s", (_why, byPass, said) => {
  const { steps, customersOut } = plan(
    draw(`${LINE}
     d1   disconnect  p1-p2  ABC  loadBreakAmps=200
     vr1  regulator   p2-p3  ABC
     d2   disconnect  p3-p4  ABC  loadBreakAmps=200
     sp2  span        p4-p5  ABC  lengthM=800
     ${byPass}
     ${house(1, "p5")}
     w1   work        p3     ABC  does=vr1`),
  );
  expect(steps.filter(({ why }) => why.key === "why.off.noBypass")).toHaveLength(said);
  expect(customersOut > 0).toBe(said > 0);
});

test("leads are cut with cutters and not joined with them", () => {
  const { steps } = plan(
    draw(`${LINE}
     ${house(1, "p1")}
     l1   lead    p1s1-q1    12
     ${house(2, "p1")}
     sx   span    q1-p1s2    12  lengthM=60 construction=secondary
     w1   work    p1b1       A`),
  );
  const ofLead = steps
    .filter(({ element }) => element === "l1")
    .filter((it) => ["cut", "join"].includes(it.do));
  expect(ofLead.map((it) => [it.do, it.with])).toEqual([
    ["cut", "lead-cutters"],
    ["join", undefined],
  ]);
});

/** Where only a neutral is worked on, or an open one is joined: it is tested as what it may be, a hot conductor. */
describe("hands on a neutral", () => {
  const service = (conductors: string) => `${LINE}
    c1    cutout       p1-p2   A    fuse=K10
    t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
    sv    span         p3-h0   12   construction=secondary lengthM=30 parted=N
    m1    meter        h0-h1   12
    ld1   load         h1      12   connection=wye kw=4 customers=1
    h0    point        kind=service earthOhms=100
    h1    point        kind=service earthOhms=100
    w1    work         h0      ${conductors}  does=sv`;
  const primary = (conductors: string) => `${LINE}
    c0    cutout       p1-p2   A    fuse=K25
    sp1   span         p2-p3   A    lengthM=80 parted=N
    ${house(1, "p3")}
    w1    work         p3      ${conductors}  does=sp1`;

  test.each([
    ["of a service, the legs in hand too", service("12N"), "open c1 A", "p3 12N, h0 12N"],
    ["of a service, the neutral alone in hand", service("N"), "open c1 A", "p3 12N, h0 12N"],
    ["of a line, the phase in hand too", primary("AN"), "open c0 A", "p2 AN, p3 AN"],
    ["of a line, the neutral alone in hand", primary("N"), "open c0 A", "p2 AN, p3 AN"],
  ])("an open neutral is joined: %s", (_why, drawing, opened, tested) => {
    const document = draw(drawing);
    const { steps, ok } = plan(document, { alternatives: false });
    expect(ok).toBe(true);
    expect(rehearse(planDocument(document)).findings).toEqual([]);
    const untilWork = steps.slice(
      0,
      steps.findIndex((it) => it.do === "work"),
    );
    const said = (verb: string) => untilWork.filter((it) => it.do === verb);
    expect(said("open").map((it) => `open ${it.element} ${it.phases}`)).toEqual([opened]);
    expect(
      said("test")
        .map((it) => `${it.at} ${it.phases}`)
        .join(", "),
    ).toBe(tested);
    expect(said("ground")).toHaveLength(2);
  });

  test("a whole one on a live line is tested and worked on with the line covered, and nobody is dark", () => {
    const document = draw(`${LINE}
      ${house(1, "p1")}
      w1   work   p1   N`);
    const { steps, customersOut } = plan(document, { alternatives: false });
    expect(rehearse(planDocument(document)).findings).toEqual([]);
    expect(customersOut).toBe(0);
    expect(steps.map((it) => [it.do, it.phases ?? it.at].join(" ").trim())).toEqual([
      "brief",
      "check-detector",
      "test N",
      "check-detector",
      "cover p1",
      "work w1",
      "all-clear",
      "uncover p1",
    ]);
  });
});

test.each([
  ["one that moves is bypassed at neutral", "sound", true],
  [
    "one that is stuck off neutral is switched out, its load dropped, before the bypass closes",
    "seized",
    false,
  ],
])("a regulator that is changed: %s", (_why, condition, isFirst) => {
  const document = draw(`${LINE}
    rc   recloser    p1-p1b ABC
    d1   disconnect  p1b-p2 ABC
    vr1  regulator   p2-p3  ABC  taps={"A":9,"B":9,"C":8} condition=${condition}
    d2   disconnect  p3-p4  ABC
    by   disconnect  p1b-p4 ABC  open=ABC normallyOpen=true
    sp2  span        p4-p5  ABC  lengthM=800
    ${house(1, "p5")}
    w1   work        p3     ABC  does=vr1`);
  const { steps } = plan(document, { alternatives: false });
  const untilWork = steps.slice(
    0,
    steps.findIndex((it) => it.do === "work"),
  );
  expect(steps.length).toBeGreaterThan(0);
  const when = (verb: string, id: string) => untilWork.findIndex((it) => it.do === verb && it.element === id);
  expect(when("set-position", "vr1") >= 0).toBe(isFirst);
  expect(when("close", "by") < Math.min(when("open", "d1"), when("open", "d2"))).toBe(isFirst);
  expect(when("close", "by")).toBeGreaterThan(0);
  expect(rehearse(planDocument(document)).findings.filter(({ severity }) => severity === "danger")).toEqual(
    [],
  );
});

test("the reclosing of a circuit that crosses the work is held before anything is opened", () => {
  const { steps } = plan(
    draw(`${LINE}
     d1   disconnect  p1-p2  A  loadBreakAmps=100
     sp1  span        p2-p3  A  lengthM=90
     sp2  span        p3-p4  A  lengthM=90
     ld1  load        p4     A  kw=20 customers=5
     n1   nearby      span=sp2 relation=crossing kvLL=34.5
     n2   nearby      span=sp1 relation=parallel kvLL=12.47 spacingM=9 lengthM=90
     w1   work        p3     A`),
    { alternatives: false },
  );
  const asked = steps.filter((it) => it.do === "ask").map(({ element }) => element);
  expect(asked).toEqual(["n1"]);
  expect(steps.findIndex((it) => it.do === "ask")).toBeLessThan(steps.findIndex((it) => it.do === "open"));
});

test("a capacitor bank that is changed stays on the line, whose grounds short it, also where its links could not pick it up", () => {
  const { steps } = plan(
    draw(`${LINE}
     cc   cutout     p1-q1  ABC  fuse=K25
     cap  capacitor  q1     ABC  kvar=600 kvLL=12.47 connection=wye
     ld   load       p1     ABC  kw=500 customers=100 connection=wye
     w1   work       q1     ABC  does=cap`),
    { alternatives: false },
  );
  const work = steps.findIndex((it) => it.do === "work");
  const before = steps.slice(0, work).filter(({ do: verb }) => ["open", "wait", "ground"].includes(verb));
  expect(before.map((it) => [it.do, it.element].join(" ").trim())).toEqual(["open cc", "wait", "ground g1"]);
});

test("nothing is closed onto a ground set that was found on: the place is looked at, and the elbow before it stays open", () => {
  const { steps, ok, findings } = plan(
    draw(`${LINE}
     la   arrester     p3     A  condition=cracked
     c1   cutout       p1-p3  A  fuse=K25
     t1   transformer  p3-s3  A  connection=single kva=25 primaryKv=7.2 secondaryV=240
     ld1  load         s3     12 connection=delta kw=9 customers=2
     m2   span         p1-p2  A  lengthM=60
     el   elbow        p2-d   A  open=A
     gx   ground       d      A  by=Crew_1
     d    point        kind=pad
     p2   point        kind=pad
     w1   work         p3     A  does=la`),
    { alternatives: false },
  );
  expect([ok, findings.filter(({ severity }) => severity === "danger")]).toEqual([true, []]);
  expect(steps.some((it) => it.do === "close" && it.element === "el")).toBe(false);
  expect(steps.at(-1)).toMatchObject({ do: "inspect", at: "d" });
});

test("forty customers behind an elbow do not wait for two behind a cutout where the work changed neither branch", () => {
  const { steps } = plan(
    draw(`
     s1   source       sub    ABC kvLL=12.47
     m0   span         sub-p1 ABC lengthM=900
     k1   clamp        p1-p2  A   condition=burned
     c0   cutout       p2-p2b A   fuse=K65
     a1   span         p2b-p5 A   lengthM=100
     b1   span         p2b-p6 A   lengthM=100
     c1   cutout       p5-p3  A   fuse=K10 blown=A
     t1   transformer  p3-s3  A   connection=single kva=25 primaryKv=7.2 secondaryV=240
     l1   load         s3     12  connection=delta kw=9 customers=2
     el   elbow        p6-d   A   open=A
     t2   transformer  d-s4   A   connection=single kva=100 primaryKv=7.2 secondaryV=240
     l2   load         s4     12  connection=delta kw=60 customers=40
     d    point        kind=pad
     p6   point        kind=pad
     s4   point        kind=pad
     w1   work         p2     A   does=k1`),
    { alternatives: false },
  );
  const closed: readonly (string | undefined)[] = steps
    .filter((it) => it.do === "close")
    .map(({ element }) => element);
  expect(closed.indexOf("el")).toBeLessThan(closed.indexOf("c1"));
});
