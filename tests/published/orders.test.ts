import { describe, expect, test } from "vitest";
import type { Step, StillhotDocument } from "../../src/core/document";
import { isSwitching } from "../../src/core/steps";
import { plan, planDocument, rehearse } from "../../src/core/procedure";
import { draw, parseSteps } from "../support/jobNotation";
import { spell } from "../support/words";

/**
 * Classic jobs, each with the order in which common practice and the cited paragraphs do it, written down before any plan
 * was made. The order holds the steps that matter, and every switching step there is; between them a plan may have more.
 *
 * What they share, with the paragraphs as `shared/reference/procedure-rules.json` tells them:
 * - a briefing before the first step (1910.269(c)(1)(ii));
 * - where a line section is the job, a permit before anything is operated ((m)(3)(i)), given back when people are clear and
 *   the grounds are off ((m)(3)(x)), and no tag off before that ((m)(3)(xii));
 * - load is broken by what is made to break it ((l)(12)(i));
 * - every way from a known source opened and tagged ((m)(3)(ii)), what closes by itself blocked ((m)(3)(iii));
 * - tested after that and before the first ground ((m)(3)(vi), (n)(5)), the detector proven before and after (practice);
 * - the ground end on first, the line end off first ((n)(6)(i), (n)(6)(ii));
 * - nothing closed before grounds are off, people clear and tags off ((m)(3)(xiii)), and the cutout closed from where its
 *   blast does not reach ((l)(9)).
 */
interface Classic {
  readonly job: string;
  /** the order in words, and what it rests on */
  readonly practice: string;
  readonly drawing: string;
  readonly order: string;
  /** verbs that have no place in it */
  readonly never?: readonly Step["do"][];
  readonly customersOut: number;
}

const JOBS: readonly Classic[] = [
  {
    job: "change a transformer on its own tap",
    practice:
      "Drop the load with the load-break tool at the cutout, tag it; no permit, since it is the transformer's own tap. Prove " +
      "the detector, test the primary bushing and the secondary, prove it again; ground both sides, because any customer may " +
      "run a generator: one set on the secondary bushings is less than pulling both meters. Work. Grounds off line end first, " +
      "all clear said back, tag off, stand clear, close the cutout.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   B    fuse=K10
      t1    transformer  p2-p3   B    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p3-h1   12
      m2    meter        p3-h2   12
      ld1   load         h1      12   connection=delta kw=3 customers=1
      ld2   load         h2      12   connection=delta kw=4 customers=1
      h1    point        kind=service
      h2    point        kind=service
      w1    work         p2      B`,
    order: `
      brief
      open c1 B with load-break-tool
      tag c1
      check-detector
      test p2 B
      test p3 12
      check-detector
      ground p2 B first neutral to neutral
      ground p3 12 first neutral to neutral
      work w1
      all-clear
      unground g2 first phase
      unground g1 first phase
      all-clear
      confirm
      untag c1
      stand-clear
      close c1 B`,
    never: ["request-permit", "pull", "lift"],
    customersOut: 2,
  },
  {
    job: "replace the burning tap clamp of a transformer",
    practice:
      "A clamp breaks no load: open the cutout below it under load with the load-break tool, then lift the clamp, which now " +
      "carries nothing, and secure it so that it cannot swing back. Tag both, test and ground the lead between them, work. " +
      "On the way back the clamp goes on with the cutout open, and the cutout picks up the load.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      k1    clamp        p1-p2   A
      c1    cutout       p2-p3   A    fuse=K10
      t1    transformer  p3-p4   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      m1    meter        p4-h1   12
      ld1   load         h1      12   connection=delta kw=6 customers=2
      h1    point        kind=service
      w1    work         p2      A`,
    order: `
      brief
      open c1 A with load-break-tool
      lift k1 A with clamp-stick
      block k1
      tag k1
      check-detector
      test p2 A
      check-detector
      ground p2 A first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      untag k1
      unblock k1
      attach k1 A
      stand-clear
      close c1 A`,
    never: ["request-permit", "pull"],
    customersOut: 2,
  },
  {
    job: "replace the tap clamp of a sideline that has a cutout",
    practice:
      "The same with a permit, since a sideline with several transformers is a line section: the cutout drops the whole " +
      "sideline, the clamp is lifted dead. The customers beyond the open cutout could feed back to it, so it is tagged too.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      k1    clamp        p1-p2   A
      c1    cutout       p2-p3   A    fuse=K25
      sp1   span         p3-p4   A    lengthM=60
      c2    cutout       p4-p5   A    fuse=K10
      t1    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld1   load         p6      12   connection=delta kw=8 customers=3
      sp2   span         p4-p7   A    lengthM=60
      c3    cutout       p7-p8   A    fuse=K10
      t2    transformer  p8-p9   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld2   load         p9      12   connection=delta kw=6 customers=2
      w1    work         p2      A`,
    order: `
      brief
      request-permit
      receive-permit
      confirm
      open c1 A with load-break-tool
      tag c1
      lift k1 A with clamp-stick
      tag k1
      check-detector
      test p2 A
      check-detector
      ground p2 A first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      release-permit
      untag k1
      attach k1 A
      stand-clear
      close c1 A`,
    customersOut: 5,
  },
  // The cutout at p4 lies nearer to the source than that at p7, so it closes first: from the source outward, each picking up
  // one transformer. Neither feeds the other, so the other way round is no danger either (common practice, no source).
  {
    job: "replace the tap clamp of a sideline that has no cutout",
    practice:
      "Nothing at the tap breaks the load, so it is taken off transformer by transformer with the load-break tool; then the " +
      "clamp, which carries the charge of the line and no more, is lifted. It goes on again before the transformers are " +
      "picked up one by one.",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      end   load         p1      ABC  kw=600 customers=150
      k1    clamp        p1-p2   A
      sp1   span         p2-p4   A    lengthM=60
      c2    cutout       p4-p5   A    fuse=K10
      t1    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld1   load         p6      12   connection=delta kw=8 customers=3
      sp2   span         p4-p7   A    lengthM=60
      c3    cutout       p7-p8   A    fuse=K10
      t2    transformer  p8-p9   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld2   load         p9      12   connection=delta kw=6 customers=2
      w1    work         p2      A`,
    order: `
      brief
      request-permit
      receive-permit
      confirm
      open c2 A with load-break-tool
      open c3 A with load-break-tool
      lift k1 A with clamp-stick
      block k1
      tag k1
      check-detector
      test p2 A
      check-detector
      ground p2 A first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      release-permit
      untag k1
      attach k1 A
      stand-clear
      close c2 A
      stand-clear
      close c3 A`,
    customersOut: 5,
  },
  {
    job: "replace a tap clamp with nothing beyond it that opens",
    practice:
      "No cutout stands at the tap and none at the transformer. One goes up the line to the switch on the source side that " +
      "may break the load, although it takes the rest of the line with it; the clamp stays on.",
    drawing: `
      s1    source       sub     A    kvLL=12.47
      main  span         sub-p0  A    lengthM=2000
      d1    disconnect   p0-p1   A    loadBreakAmps=200
      sp2   span         p1-p7   A    lengthM=90
      t2    transformer  p7-p8   A    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ld2   load         p8      12   connection=delta kw=30 customers=12
      k1    clamp        p1-p2   A
      sp1   span         p2-p4   A    lengthM=60
      t1    transformer  p4-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld1   load         p6      12   connection=delta kw=8 customers=3
      w1    work         p2      A`,
    order: `
      brief
      request-permit
      receive-permit
      confirm
      open d1 A
      tag d1
      check-detector
      test p2 A
      check-detector
      ground p2 A first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      release-permit
      untag d1
      close d1 A`,
    never: ["lift"],
    customersOut: 15,
  },
  {
    job: "change a pole of a sideline with a tie at its far end",
    practice:
      "Open and tag the sideline cutout, and tag the tie that is open already: it is a way from a known source, (m)(3)(ii). " +
      "The far recloser is remote, but the tie in front of it is what the isolation rests on; a tie that is itself remote is " +
      "blocked, (m)(3)(iii).",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p3   A    fuse=K25
      sp1   span         p3-p4   A    lengthM=60
      c2    cutout       p4-p5   A    fuse=K10
      t1    transformer  p5-p6   A    connection=single kva=25 primaryKv=7.2 secondaryV=240
      ld1   load         p6      12   connection=delta kw=8 customers=3
      sp2   span         p4-p7   A    lengthM=60
      tie   disconnect   p7-p8   A    open=A normallyOpen=true remote=true
      far   span         p9-p8   A    lengthM=3000
      s2    source       p9      A    kvLL=12.47
      w1    work         p4      A`,
    order: `
      brief
      request-permit
      receive-permit
      confirm
      open c1 A with load-break-tool
      tag c1
      block tie
      tag tie
      check-detector
      test p4 A
      check-detector
      ground p4 A first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      release-permit
      untag c1
      stand-clear
      close c1 A`,
    customersOut: 3,
  },
  {
    job: "replace a cutout of a floating-wye bank",
    practice:
      "One open phase of such a bank stands at half voltage through the other two, so all three cutouts are opened before " +
      "any phase is taken for dead, (l)(1)(iii). Its three-wire secondary has no neutral for a ground set: the meter is " +
      "pulled. Pulled after the cutouts, since a meter breaks no load, and put back before them; the tag on the cutouts hangs " +
      "until they are closed, (m)(3)(xiii).",
    drawing: `
      s1    source       sub     ABC  kvLL=12.47
      main  span         sub-p1  ABC  lengthM=2000
      c1    cutout       p1-p2   ABC  fuse=K12
      t1    transformer  p2-p3   ABC  connection=Y-D kva=150 primaryKv=12.47 secondaryV=480
      m1    meter        p3-h1   ABC  neutral=false
      ld1   load         h1      ABC  connection=delta kw=70 kvar=45 customers=1
      h1    point        kind=service
      w1    work         p2      B`,
    order: `
      brief
      open c1 ABC with load-break-tool
      tag c1
      pull m1
      check-detector
      test p2 ABC
      check-detector
      ground p2 ABC first neutral
      work w1
      all-clear
      unground g1 first phase
      all-clear
      confirm
      replace m1
      untag c1
      stand-clear
      close c1 ABC`,
    never: ["request-permit"],
    customersOut: 1,
  },
  {
    job: "replace a cable between two elbows of an underground loop",
    practice:
      "The cable is parked open at its far end already: that elbow is tagged. The near elbow is made to break its load, so it " +
      "is parked under load with the stick, tagged, and both ends of the cable are tested and grounded. Nobody is out: the " +
      "loop feeds them from the other side.",
    drawing: `
      s1    source       sub      ABC  kvLL=12.47
      main  span         sub-p1   ABC  lengthM=1600
      line  span         p1-p2    ABC  lengthM=400
      c1    cutout       p1-p3    B    fuse=K40
      c2    cutout       p2-p4    B    fuse=K40
      u1    span         p3-b1    B    lengthM=120 construction=cable
      e1    elbow        b1-b2    B
      u2    span         b2-b3    B    lengthM=150 construction=cable
      e2    elbow        b3-b4    B    open=B normallyOpen=true
      u3    span         p4-b4    B    lengthM=110 construction=cable
      t1    transformer  b1-x1    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ld1   load         x1       12   connection=delta kw=15 customers=6
      t2    transformer  b4-x2    B    connection=single kva=50 primaryKv=7.2 secondaryV=240
      ld2   load         x2       12   connection=delta kw=16 customers=6
      b1    point        kind=pad
      b2    point        kind=pad
      b3    point        kind=pad
      b4    point        kind=pad
      w1    work         b2       B
      w2    work         b3       B`,
    order: `
      brief
      request-permit
      receive-permit
      confirm
      open e1 B with clamp-stick
      tag e1
      tag e2
      check-detector
      ground b3 B first neutral
      ground b2 B first neutral
      work w1
      work w2
      all-clear
      all-clear
      confirm
      release-permit
      untag e1
      close e1 B`,
    never: ["lift", "stand-clear"],
    customersOut: 0,
  },
];

describe("The proposed order of a classic job is that of common practice and the cited paragraphs", () => {
  for (const { job, practice, drawing, order, never = [], customersOut } of JOBS)
    test(job, () => {
      const document: StillhotDocument = draw(drawing);
      const planned = plan(document);
      expect(planned.findings.map((it) => `${it.rule} ${it.where}: ${spell(it.message)}`)).toEqual([]);
      expect(planned.ok).toBe(true);
      expect(planned.customersOut).toBe(customersOut);
      const wanted = parseSteps(order, Object.keys(document.system.points));
      expect(missingFrom(planned.steps, wanted), practice).toBe("");
      expect(planned.steps.filter(isSwitching).map(inWords)).toEqual(
        wanted.filter(isSwitching).map((it) => inWords(matching(planned.steps, it)!)),
      );
      for (const verb of never) expect(planned.steps.some((it) => it.do === verb)).toBe(false);
      const rehearsal = rehearse(planDocument(document));
      expect(rehearsal.ok).toBe(true);
      expect(rehearsal.findings).toEqual([]);
      for (const { why } of planned.steps) expect(spell(why)).not.toMatch(/[{}]|undefined|\[object/);
    });
});

/** Every key of the wanted step stands in the planned one. */
const isSame = (planned: Step, wanted: Step): boolean =>
  Object.entries(wanted).every(([key, value]) => planned[key as keyof Step] === value);

const matching = (planned: readonly Step[], wanted: Step): Step | undefined =>
  planned.find((it) => isSame(it, wanted));

const inWords = ({ do: verb, element, at, phases, with: tool }: Step): string =>
  [verb, element, at, phases, tool].filter((it) => it !== undefined).join(" ");

/** The first wanted step that does not follow the ones before it; nothing where all stand in their order. */
function missingFrom(planned: readonly Step[], wanted: readonly Step[]): string {
  let from = 0;
  for (const step of wanted) {
    const found = planned.findIndex((it, index) => index >= from && isSame(it, step));
    if (found === -1) return `${inWords(step)} after ${planned.slice(0, from).map(inWords).join("; ")}`;
    from = found + 1;
  }
  return "";
}
