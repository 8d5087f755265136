import { expect, test } from "vitest";
import { fromNotation } from "../../src/core/notation";
import { plan } from "../../src/core/procedure";
import { demoDrawings } from "../support/demoDrawings";
import { draw } from "../support/jobNotation";
import { spell } from "../support/words";
import { CALL_OUT_JOBS } from "./callOuts";
import { NEW_AND_MOVED_JOBS } from "./newAndMoved";
import { ORDINARY_JOBS } from "./ordinary";
import { OTHER_GEAR_JOBS } from "./otherGear";
import { YEARS_JOBS } from "./throughTheYear";
import { WEEKLY_JOBS } from "./weekly";

/** Jobs that say where hands go: the others are done from a device, and have nothing to plan for. */
const WITH_WORK = [
  ...ORDINARY_JOBS,
  ...YEARS_JOBS,
  ...NEW_AND_MOVED_JOBS,
  ...OTHER_GEAR_JOBS,
  ...WEEKLY_JOBS,
].filter(({ drawing }) => /^ *w1 +work /m.test(drawing));

/** Another crew keeps these people dark. */
const DARK_AT_END: Readonly<Record<string, number>> = {
  "after a storm two crews hold a permit each on one line": 14,
};

/** Nothing on them opens with a gap that one can see: they are worked live, and a plan says what an isolation would lack. */
const WITHOUT_GAP = [
  "move a live line over to a new pole, in gloves",
  "change the insulator of one phase with hot sticks, the line live",
];

test.each(
  WITH_WORK.filter(({ job }) => !WITHOUT_GAP.includes(job)).map(
    ({ job, drawing }) => [job, drawing] as const,
  ),
)("a plan, and nobody dark at its end who can be supplied: %s", (job, drawing) => {
  const { steps, findings, customers } = plan(draw(drawing), { alternatives: false });
  expect(findings.map((it) => `${it.rule} ${spell(it.message)}`)).toEqual([]);
  expect(steps.some((it) => it.do === "work")).toBe(true);
  expect(customers.end).toBe(DARK_AT_END[job] ?? 0);
});

test.each(WITHOUT_GAP)("a line that nothing opens in sight is not called isolated: %s", (name) => {
  const { drawing } = WITH_WORK.find(({ job }) => job === name)!;
  const { ok, findings } = plan(draw(drawing), { alternatives: false });
  expect([ok, findings.map(({ rule }) => rule)]).toEqual([false, ["visible-gap"]]);
});

test("between two others on one secondary a transformer comes out with nobody dark, its leads cut before its cutout and remade after it", () => {
  const { drawing } = CALL_OUT_JOBS.find(({ job }) => job.includes("middle one of three"))!;
  const { ok, steps, customers } = plan(draw(drawing), { alternatives: false });
  const moved = steps.filter(({ do: verb }) => ["open", "cut", "join", "close"].includes(verb));
  expect([ok, customers.worst, moved.map((it) => `${it.do} ${it.element}`)]).toEqual([
    true,
    0,
    ["cut l2", "open x2", "close x2", "join l2"],
  ]);
});

test("whoever alone hangs on a three-phase bank is off it before it opens, and back after its volts were read", () => {
  const { drawing } = YEARS_JOBS.find(({ job }) => job.includes("clinic"))!;
  const { steps } = plan(draw(drawing), { alternatives: false });
  const told = steps
    .filter((it) => ["open", "close", "ground", "unground"].includes(it.do) || it.expect === "live")
    .map((it) => `${it.do} ${it.do === "ground" || it.do === "test" ? it.at : it.element}`);
  expect(told).toEqual([
    "open mn",
    "open c1",
    "ground p2",
    "ground p3",
    "unground g2",
    "unground g1",
    "close c1",
    "test p3",
    "close mn",
  ]);
});

test("a machine that runs with the station is stopped and cut off before the line opens", () => {
  const { drawing } = NEW_AND_MOVED_JOBS.find(({ job }) => job.includes("solar farm"))!;
  const { steps } = plan(draw(drawing), { alternatives: false });
  const moved = steps.filter(({ do: verb }) => ["open", "stop", "close"].includes(verb));
  expect(moved.map((it) => `${it.do} ${it.element}`)).toEqual([
    "stop gf",
    "open swf",
    "open sw1",
    "close sw1",
    "close swf",
  ]);
});

const MOVED = ["open", "pull", "close", "replace", "test"];

test.each([
  [
    "a bank between two lines, with a switch on its low side",
    NEW_AND_MOVED_JOBS.find(({ job }) => job.includes("step-down bank"))!.drawing,
    ["open sw3", "open c1", "close c1", "test p3", "close sw3"],
  ],
  [
    "a transformer of one house, with its main",
    `
      s1    source       sub     ABC  kvLL=12.47
      c1    cutout       sub-p2  A    fuse=K10
      t1    transformer  p2-p3   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p3-h1   12
      mn    main         h1-h2   12
      ld1   load         h2      12   connection=delta kw=6 customers=1
      w1    work         p2      A    does=t1
    `,
    ["open mn", "open c1", "close c1", "test p3", "close mn"],
  ],
])("the volts of what was changed are read with nobody on it: %s", (_what, drawing, wanted) => {
  const { ok, steps } = plan(draw(drawing), { alternatives: false });
  const told = steps
    .filter(({ do: verb, expect: shows }) => MOVED.includes(verb) && (verb !== "test" || shows === "live"))
    .map((it) => `${it.do} ${it.element ?? it.at}`);
  expect([ok, told]).toEqual([true, wanted]);
});

const planOf = (words: string) =>
  plan(draw(OTHER_GEAR_JOBS.find(({ job }) => job.includes(words))!.drawing), { alternatives: false });

test("a feeder's own breaker takes the load off its disconnects, and no other feeder goes dark for it", () => {
  const { ok, steps, customers } = planOf("breaker out at the station");
  const opened = steps.filter((it) => it.do === "open").map(({ element }) => element);
  expect([ok, customers.worst, opened]).toEqual([true, 0, ["b1", "d11", "d12", "tie"]]);
  expect(spell(steps.find((it) => it.do === "ground")!.why)).toContain("the station's ground grid");
});

test("what work at one place hangs at another is tested and grounded once it hangs, before hands come to it", () => {
  const { ok, steps } = planOf("string a new span");
  const told = steps
    .filter(({ do: verb }) => ["test", "ground", "work"].includes(verb))
    .map((it) => `${it.do} ${it.at}`);
  const first = ["test p3", "ground p3", "work w1"];
  expect([ok, told]).toEqual([true, [...first, "test p4", "ground p4", "work w2", "test p6"]]);
  const put = steps.find((it) => it.do === "close" && it.element === "c4")!;
  expect(spell(put.why)).toBe("put in open by the work; in service it is closed");
});

test("a clamp whose cutout is changed comes off and goes on with that cutout open, and nobody beyond the tap is out", () => {
  const { ok, steps, customers } = plan(
    draw(`
      s1 source sub ABC kvLL=12.47
      m0 span sub-p0 ABC lengthM=900
      sw disconnect p0-p1 ABC gang=true loadBreakAmps=600
      ldm load p1 ABC kw=150 customers=44
      k1 clamp p1-p2 A
      c2 cutout p2-p3 A fuse=K15
      sp span p3-p4 A lengthM=80
      x4 cutout p4-p5 A fuse=K5
      t5 transformer p5-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240
      m6 meter p6-h1 12
      ld6 load h1 12 connection=delta kw=1 customers=3
      h1 point kind=service
      w1 work p3 A does=c2`),
    { alternatives: false },
  );
  const moved = steps.filter(({ do: verb }) => ["open", "lift", "attach", "close"].includes(verb));
  const told = moved.map((it) => `${it.do} ${it.element}`);
  expect([ok, customers.worst, told]).toEqual([true, 3, ["open c2", "lift k1", "attach k1", "close c2"]]);
});

test("another way is told once, by what it opens beside the first: a recloser with disconnects on both sides and a bypass", () => {
  const read = fromNotation(`
st0: station "Hill station"
sub station earthOhms=1
  s1 source ABC kvLL=12.47
m0 span ABC lengthM=3000 rodsPerKm=2.5
sp0: "Pole 60"
p0 earthOhms=25
d1 disconnect ABC "Source-side disconnects"
p1
r1 recloser ABC "Recloser R60"
p2
d2 disconnect ABC "Load-side disconnects"
p3
  by disconnect ABC "Bypass" from=p0 to=p3 open normallyOpen
q34 span ABC lengthM=600 rodsPerKm=2.5 from=p3 to=p4
sp4: "Pole 66"
p4 earthOhms=25
  ld4 load ABC kw=200 customers=1
  w1 work ABC "new dead-end pole"
`);
  if (!("document" in read)) throw new Error(JSON.stringify(read.problems));
  const { alternatives } = plan(read.document);
  expect(alternatives.map(({ summary }) => spell(summary))).toEqual([
    "open Pole 60, Load-side disconnects as well",
  ]);
  const opened = alternatives[0]!.steps.filter((it) => it.do === "open").map(({ element }) => element);
  expect(opened).toEqual(["r1", "d1", "d2"]);
});

test("another way says what it opens, also where the first opens that for a moment on the way back", () => {
  const { steps, alternatives } = plan(new Map(demoDrawings()).get("quarry-lane.stillhot.json")!);
  const work = steps.findIndex((it) => it.do === "work");
  const after = steps.slice(work).filter((it) => it.do === "open" && it.element !== "tie");
  expect(after.map(({ element }) => element)).toEqual(["c2", "c3"]);
  expect(alternatives.map(({ summary }) => spell(summary))).toEqual([
    "open Pole Q2, T1 cutout; Pole Q3, T2 cutout instead of Pole Q1, sideline cutout",
  ]);
});
