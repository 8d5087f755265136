import { describe, expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import type { Step, StillhotDocument } from "../../document";
import { rehearse } from "../rehearsal/rehearse";
import { type Plan, plan, planDocument } from ".";
import { spell } from "../../../../tests/support/words";

const words = ({ do: verb, element, at, phases }: Step): string =>
  [verb, element ?? at, phases].filter((it) => it !== undefined).join(" ");
const inWords = ({ steps }: Pick<Plan, "steps">): string => steps.map(words).join("; ");

/** What is done with devices, tags and blocks, up to the work. */
const isolation = ({ steps }: Plan): string =>
  steps
    .slice(
      0,
      steps.findIndex((it) => it.do === "check-detector"),
    )
    .filter((it) => !["brief", "barricade", "request-permit", "receive-permit", "confirm"].includes(it.do))
    .map(words)
    .join("; ");

/** An order that plays without a danger or a warning. */
function good(text: string): Plan {
  const document = draw(text);
  const planned = plan(document);
  expect(planned.findings.map(({ rule, where }) => `${rule} ${where}`)).toEqual([]);
  expect(planned.ok).toBe(true);
  const rehearsal = rehearse(planDocument(document));
  expect([rehearsal.ok, rehearsal.findings]).toEqual([true, []]);
  return planned;
}

const LINE = `
  s1    source       sub     ABC  kvLL=12.47
  main  span         sub-p1  ABC  lengthM=2000
`;
const HOUSES = `
  t1    transformer  p3-p4   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
  m1    meter        p4-h1   12   label=M1
  m2    meter        p4-h2   12   label=M2
  ld1   load         h1      12   connection=delta kw=3 customers=1
  ld2   load         h2      12   connection=delta kw=4 customers=1
  h1    point        kind=service
  h2    point        kind=service
`;

describe("What is opened", () => {
  test("a switch without a rating opens after the recloser before it has broken the load, and carries the isolation", () => {
    const planned = good(`
      ${LINE}
      r1  recloser    p1-p2  ABC  interruptingAmps=4000
      d1  disconnect  p2-p3  ABC  gang=true
      ld  load        p3     ABC  kw=900 customers=40
      w1  work        p3     ABC`);
    expect(isolation(planned)).toMatch(/open r1.*open d1; tag d1/);
    expect(inWords(planned)).toMatch(/close d1.*close r1/);
  });

  test("nothing with a hidden gap alone: said with what would give a gap", () => {
    const planned = plan(
      draw(`
        ${LINE}
        r1  recloser  p1-p3  ABC
        ld  load      p3     ABC  kw=900 customers=40
        w1  work      p3     ABC`),
    );
    expect(planned.ok).toBe(false);
    // Test, ground and work rest on the one gap: it is told once.
    expect(planned.findings.map(({ rule }) => rule)).toEqual(["visible-gap"]);
    expect(spell(planned.uncontrolled[0]!.control)).toMatch(/in series with recloser would$/);
  });

  test("what is changed hangs right on a live line: it is said where", () => {
    const planned = plan(
      draw(`${LINE}
      c1 cutout p1-p2 A
      nc cutout p1-p9 B planned=true
      w1 work p2 A does=nc`),
    );
    expect(planned.ok).toBe(false);
    expect(spell(planned.uncontrolled[0]!.control)).toMatch(
      /^what is changed has a terminal at .*phase B, and nothing on the way there from source opens/,
    );
  });

  test("nothing on the way: no order, and the threat with what would control it", () => {
    const planned = plan(draw(`${LINE}\n w1 work p1 ABC`));
    expect([planned.ok, planned.steps]).toEqual([false, []]);
    expect(planned.uncontrolled[0]).toMatchObject({ source: "s1", strength: 0, workPoint: "w1" });
    expect(spell(planned.uncontrolled[0]!.control)).toMatch(/nothing on the way from source opens/);
  });

  test("no tool that breaks the load: no order, and which thing wants one", () => {
    const planned = plan(
      draw(`
        ${LINE}
        c1  cutout  p1-p3  A  fuse=K100 loadBreak=none
        ld  load    p3     A  kw=400 customers=40
        w1  work    p3     A`),
    );
    expect([planned.ok, planned.steps]).toEqual([false, []]);
    expect(spell(planned.uncontrolled[0]!.control)).toMatch(/may break the current of cutout/);
  });

  test("what somebody else tagged is not operated", () => {
    const planned = good(`
      ${LINE}
      k1  clamp   p1-p2  A
      c1  cutout  p2-p3  A  fuse=K10 tagged=true
      c2  cutout  p3-p5  A  fuse=K10
      t1  transformer  p5-p4  A  connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld  load    p4     12 kw=5 customers=2
      w1  work    p3     A`);
    expect(isolation(planned)).toBe("open c2 A; tag c2; lift k1 A; block k1; tag k1");
  });

  test("a bank that ties its phases opens on all of them", () => {
    const planned = good(`
      ${LINE}
      c1  cutout       p1-p2  ABC  fuse=K40
      t1  transformer  p2-p3  ABC  connection=Yg-D kva=150 primaryKv=12.47 secondaryV=240 midTap=ab
      ld  load         p3     ABC  connection=delta kw=60 customers=1
      w1  work         p2     A`);
    expect(isolation(planned)).toBe("open c1 ABC; tag c1");
  });

  test("a link that would not carry the inrush of all closes first, and the rest is picked up in parts", () => {
    const taps = [3, 4, 5, 6].map(
      (n) => `
      sp${n}  span         p${n - 1}-p${n}   A   lengthM=50
      k${n}   cutout       p${n}-q${n}   A   fuse=K12
      t${n}   transformer  q${n}-x${n}   A   connection=single kva=50 primaryKv=7.2 secondaryV=240
      ld${n}  load         x${n}      12  kw=4 customers=1`,
    );
    const planned = good(`
      ${LINE}
      c1  cutout  p1-p2  A  fuse=K15
      ${taps.join("\n")}
      w1  work    p2     A`);
    expect(inWords(planned)).toMatch(/stand-clear; close c1 A; .*stand-clear; close k\d A/);
    expect(spell(planned.steps.find((it) => it.do === "open" && it.element === "k4")!.why)).toMatch(
      /at once/,
    );
  });

  test("a bank with a floating primary behind cable is switched where its poles move together", () => {
    const planned = good(`
      ${LINE}
      d1   disconnect   p1-p2  ABC  gang=true loadBreakAmps=100
      c1   cutout       p2-p3  ABC  fuse=K12
      u1   span         p3-p4  ABC  lengthM=200 construction=cable
      t1   transformer  p4-p5  ABC  connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480
      ld   load         p5     ABC  kw=2 customers=1
      w1   work         p4     ABC`);
    expect(isolation(planned)).toMatch(/^open d1; tag d1$/);
  });
});

describe("What holds customers' generators", () => {
  const TAP = `${LINE}\n c1 cutout p1-p3 A fuse=K10\n ${HOUSES}\n w1 work p3 A`;

  test("one ground set on the secondary bushings; pulling the meters is told with its price", () => {
    const planned = good(TAP);
    expect(inWords(planned)).toMatch(/ground g1 A; ground g2 12/);
    const [meters] = planned.alternatives;
    expect(spell(meters!.summary)).toBe(
      "open M1; M2 instead of a ground set at pole with cutout, low side of the transformer",
    );
    expect(meters!.operations).toBeGreaterThan(planned.operations);
    expect(inWords(meters!)).toMatch(/pull m1; .*pull m2/);
    expect(inWords(meters!)).not.toMatch(/ground g2 12/);
  });

  test("a main is opened, tagged and blocked where a secondary has no neutral and no meter", () => {
    const planned = good(`
      ${LINE}
      c1   cutout       p1-p3  ABC  fuse=K12
      t1   transformer  p3-p4  ABC  connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
      mb   main         p4-h1  ABC  neutral=false
      ld1  load         h1     ABC  connection=delta kw=70 customers=1
      h1   point        kind=service
      w1   work         p3     A`);
    expect(isolation(planned)).toBe("open c1 ABC; tag c1; open mb; block mb; tag mb");
  });
});

describe("What guards the work", () => {
  test("a capacitor on the section is left five minutes, then the grounds short it", () => {
    const planned = good(`
      ${LINE}
      d1   disconnect  p1-p2  ABC  gang=true loadBreakAmps=600
      cap  capacitor   p2     ABC  kvar=600 kvLL=12.47
      w1   work        p2     ABC`);
    expect(inWords(planned)).toMatch(
      /open d1; tag d1; wait; check-detector; test p2 ABC; check-detector; ground/,
    );
    expect(planned.steps.find((it) => it.do === "wait")!.seconds).toBe(300);
  });

  test("a capacitor that the grounds do not short is taken off", () => {
    const planned = good(`
      ${LINE}
      d1   disconnect  p1-p2  ABC  loadBreakAmps=600
      cap  capacitor   p2     ABC  kvar=600 kvLL=12.47
      w1   work        p2     A`);
    expect(isolation(planned)).toMatch(/^open cap ABC; open d1 A/);
  });

  test("what stays alive within reach is covered, and uncovered", () => {
    const planned = good(`
      ${LINE}
      c1   cutout  p1-p2  ABC  fuse=K40
      ld   load    p2     ABC  kw=90 customers=30
      c2   cutout  p2-p5  BC   fuse=K40
      ld2  load    p5     BC   kw=90 customers=30 critical=true
      w1   work    p2     A`);
    expect(inWords(planned)).toMatch(/cover p1; cover p2; work w1; all-clear; uncover p1; uncover p2/);
  });

  test("loose hardware is secured before the pole is shaken", () => {
    const planned = good(
      `${LINE}\n c1 cutout p1-p3 A fuse=K10\n ${HOUSES}\n a1 arrester p3 A loose=true\n w1 work p3 A`,
    );
    expect(inWords(planned)).toMatch(/^brief; barricade p3; secure a1; .*open c1/);
  });

  test("a stiff source asks for a thicker cable", () => {
    const cableAt = (ohms: number): string | undefined =>
      good(`
        s1  source  sub    ABC  kvLL=12.47 z1Ohms=[${ohms / 10},${ohms}] z0Ohms=[${ohms / 10},${ohms}]
        c1  cutout  sub-p3 A    fuse=K10
        ${HOUSES}
        w1  work    p3     A`).steps.find((it) => it.do === "ground")!.cable;
    expect(cableAt(2)).toBe("2");
    // 7 200 V over |0.04 + 0.4j| Ω is 17.9 kA: 1/0 withstands 15 kA for 30 cycles, 2/0 20 kA (ASTM F855).
    expect(cableAt(0.4)).toBe("2/0");
  });

  test("a capacitor bank comes back by its own switch, on all of its phases at once, after its cutout and the line", () => {
    const planned = good(`
      ${LINE}
      c1   cutout     p1-p2 ABC fuse=K65
      sp   span       p2-p3 ABC lengthM=200
      x5   cutout     p3-p5 B   fuse=K10
      t5   transformer p5-p6 B  connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld5  load       p6    12  connection=delta kw=6 customers=6
      cc   cutout     p3-p4 ABC fuse=K20 blown=B
      cap  capacitor  p4    ABC kvar=300 kvLL=12.47 charged=true
      w1   work       p3    ABC does=cc`);
    expect(inWords(planned)).toMatch(/work w1.*close cc B.*close cap/);
    expect(inWords(planned)).toMatch(/work w1.*close c1.*close cap/);
  });

  test("a neutral that leads nowhere and has no rod holds nothing: the set goes to a rod, and to it", () => {
    const setOf = (more: string): string | undefined =>
      good(`
        s1  source      sub    ABC kvLL=4.8 earthed=false
        m0  span        sub-p0 ABC lengthM=900 neutral=false
        d1  disconnect  p0-p1  ABC neutral=false loadBreakAmps=100
        sp1 span        p1-p2  ABC lengthM=60
        p1  point       earthOhms=none
        p2  point       earthOhms=none
        w1  work        p2     ABC
        ${more}`).steps.find((it) => it.do === "ground")!.to;
    expect(setOf("")).toBe("both");
    expect(setOf("sp1 span p1-p2 ABC lengthM=60 neutral=false")).toBe("earth");
    expect(setOf("p1 point earthOhms=25")).toBe("neutral");
  });

  test("a burned neutral that the hands come to is held by the rod of a set, once the side that leads home has its own", () => {
    const planned = good(`
      s1  source       sub   ABC kvLL=12.47
      m0  span         sub-p2 ABC lengthM=900
      x1  cutout       p2-p3 C   fuse=K6
      t1  transformer  p3-q2 C   connection=single kva=25 primaryKv=7.2 secondaryV=240
      jn  lead         q2-r2 12  cut=N condition=burned
      r2  point        earthOhms=none
      sv  span         r2-h0 12  lengthM=30 construction=secondary
      h0  point        kind=service
      l1  load         h0    1   kw=8 customers=5
      l2  load         h0    2   kw=2
      w1  work         r2    12N does=jn`);
    const sets = planned.steps.filter((it) => it.do === "ground");
    expect(sets.map(({ at, to }) => [at, to])).toEqual([
      ["q2", "neutral"],
      ["r2", "both"],
    ]);
  });

  test.each([
    [
      "a line that stays live",
      "m1 span p1-p2 ABC lengthM=100\nm2 span p2-p3 ABC lengthM=100\nl1 load p3 ABC kw=80 customers=5",
    ],
    [
      "legs that stay live",
      "t1 transformer p1-q2 A connection=single kva=25 primaryKv=7.2 secondaryV=240\nsv span q2-p2 12 lengthM=30 construction=secondary\nl1 load p2 12 connection=delta kw=8 customers=5",
    ],
    [
      "a bank's own legs, with nothing that opens before it",
      "t1 transformer p1-p2 A connection=single kva=25 primaryKv=7.2 secondaryV=240\nl1 load p2 12 connection=delta kw=8 customers=5",
    ],
  ])("no set goes onto %s because hands come to its neutral", (_why, more) => {
    const planned = plan(
      draw(`
        s1 source sub ABC kvLL=12.47
        m0 span sub-p1 ABC lengthM=900
        p2 point earthOhms=none
        ${more}
        w1 work p2 N`),
    );
    expect(planned.ok).toBe(false);
    expect(planned.steps.filter((it) => it.do === "ground")).toEqual([]);
  });

  test("an induced conductor is tested again once the grounds are on", () => {
    const planned = good(`
      s1   source      sub    ABC  kvLL=12.47
      d1   disconnect  sub-p1 A    loadBreakAmps=100
      sp   span        p1-p2  A    lengthM=1400
      n1   nearby      span=sp relation=parallel kvLL=34.5 spacingM=2 lengthM=1400
      w1   work        p2     A`);
    expect(inWords(planned)).toMatch(
      /ground g1 A; check-detector; test p2 A; check-detector; (barricade p2; )?work w1/,
    );
  });

  test("a permit is asked for by a line section, and not by a transformer's own tap", () => {
    const isAsked = (text: string): boolean => good(text).steps.some((it) => it.do === "request-permit");
    expect(isAsked(`${LINE}\n c1 cutout p1-p3 A fuse=K10\n ${HOUSES}\n w1 work p3 A`)).toBe(false);
    expect(
      isAsked(
        `${LINE}\n c1 cutout p1-p3 A fuse=K10\n ${HOUSES}\n g1 generator h1 12 kva=6 volts=240\n w1 work p3 A`,
      ),
    ).toBe(true);
  });
});

test("a permit that the job holds already is not asked for again, and is given back", () => {
  const planned = good(`
    job permit=held
    ${LINE}
    c1 cutout p1-p3 A fuse=K10
    ${HOUSES}
    w1 work p3 A`);
  expect(inWords(planned)).not.toMatch(/request|receive/);
  expect(inWords(planned)).toMatch(/release-permit; untag c1/);
});

describe("The plan of a document", () => {
  const document: StillhotDocument = draw(`
    ${LINE}
    c1 cutout p1-p3 A fuse=K10
    ${HOUSES}
    p1 point  label=P1
    p4 point  label=P4
    w1 work   p3    A`);

  test("stands in its job, and only there; planned again it is the same", () => {
    const file = planDocument(document);
    expect({ ...file, job: { ...file.job, steps: [] } }).toEqual({
      ...document,
      job: { ...document.job, steps: [] },
    });
    expect(planDocument(file)).toEqual(file);
    expect(plan(file)).toEqual(plan(document));
  });

  test("says why of every step, in one clause, with no gap left", () => {
    for (const { why } of plan(document).steps) {
      expect(spell(why)).not.toMatch(/[{}]|undefined|\. /);
      expect(spell(why).length).toBeLessThan(140);
    }
  });

  test("without a work point, and with nothing that may be moved, there is none, and nothing is called in order", () => {
    const tagged = "c1 cutout p1-p3 A open=A tagged=true taggedBy=Crew_2";
    expect(plan(draw(`${LINE}\n ${tagged}\n ${HOUSES}`))).toMatchObject({
      ok: false,
      steps: [],
      operations: 0,
      customers: { asFound: 2, end: 2 },
    });
  });

  test("tells a threat of all phases once", () => {
    const { uncontrolled } = plan(
      draw("s1 source sub ABC kvLL=12.47\n rc recloser sub-p1 ABC\n sp span p1-p2 ABC\n w1 work p2 ABC"),
    );
    expect(uncontrolled.map(({ upsets }) => upsets)).toEqual([
      [{ kind: "close", element: "rc", strength: 3 }],
    ]);
  });
});
