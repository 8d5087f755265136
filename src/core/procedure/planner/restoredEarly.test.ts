import { expect, test } from "vitest";
import { draw } from "../../../../tests/support/jobNotation";
import { complete, type StillhotDocument } from "../../document";
import { plan, planDocument } from ".";
import { customersOutIn } from "../rehearsal/customers";
import { rehearse } from "../rehearsal/rehearse";

/** A bad section between a recloser that has locked out and a tie of another station. */
const BETWEEN_TWO = `
  s1    source       sub1    ABC  kvLL=12.47
  m0    span         sub1-p0 ABC  lengthM=600
  r1    recloser     p0-p1   ABC  open=ABC
  m1    span         p1-p2   ABC  lengthM=800
  ld1   load         p2      ABC  kw=300 customers=70
  sw1   disconnect   p2-p3   ABC  gang=true loadBreakAmps=600
  m2    span         p3-p4   ABC  lengthM=500
  f1    fault        p4      AB   to=phases
  m25   span         p4-p45  ABC  lengthM=500
  sw2   disconnect   p45-p5  ABC  gang=true loadBreakAmps=600
  m3    span         p5-p6   ABC  lengthM=900
  ld3   load         p6      ABC  kw=200 customers=45
  tie   disconnect   p6-p7   ABC  gang=true loadBreakAmps=600 open=ABC normallyOpen=true
  m4    span         p7-sub2 ABC  lengthM=1500
  s2    source       sub2    ABC  kvLL=12.47
  w1    work         p4      ABC  does=f1
`;

/** A clamp above a cutout, and a tie at the far end: the clamp carries nothing once the cutout is open. */
const CLAMP = `
  s1    source       sub     ABC  kvLL=12.47
  main  span         sub-p1  ABC  lengthM=2000
  k1    clamp        p1-p2   A    condition=burned
  c1    cutout       p2-p3   A    fuse=K25
  sp1   span         p3-p4   A    lengthM=90
  ld1   load         p4      A    kw=20 customers=5
  tie   disconnect   p4-p5   A    loadBreakAmps=200 open=A normallyOpen=true
  far   span         p5-sub2 A    lengthM=2000
  s2    source       sub2    ABC  kvLL=12.47
  w1    work         p2      A    does=k1
`;

const switchingIn = (document: StillhotDocument): string[] =>
  plan(document, { alternatives: false }).steps.flatMap(({ do: verb, element }) =>
    ["open", "close", "lift", "attach", "work"].includes(verb) ? [`${verb} ${element ?? ""}`.trim()] : [],
  );

// trade.md's own order: cut off, supply everybody else, then make it dead and work; common practice, no source.
test.each([
  [
    "what is near comes back before anybody walks to the far end",
    BETWEEN_TWO,
    "open sw1, close r1, open sw2, close tie, work",
  ],
  ["the far end feeds the rest before the clamp is lifted", CLAMP, "open c1, close tie, lift k1, work"],
])("%s", (_why, drawing, wanted) => {
  const steps = switchingIn(draw(drawing));
  expect(steps.slice(0, steps.indexOf("work") + 1).join(", ")).toBe(wanted);
});

test.each([BETWEEN_TWO, CLAMP])(
  "no closing for the rest could come earlier: a rule would speak, %#",
  (drawing) => {
    const document = planDocument(draw(drawing));
    const { steps } = document.job as unknown as { steps: { do: string; element?: string }[] };
    const least = customerSteps(document);
    const isOff = (id = ""): boolean => {
      const record = document.system.elements[id as never];
      return record !== undefined && (complete(record) as { open?: string }).open !== "";
    };
    const closings = steps.flatMap((it, at) => (it.do === "close" && isOff(it.element) ? [at] : []));
    expect(closings.length).toBeGreaterThan(0);
    for (const at of closings)
      for (let to = steps.findIndex((it) => it.do === "open"); to < at; to++) {
        // A tag hangs before the crew turns to anything else.
        if (["tag", "block"].includes(steps[to]!.do)) continue;
        const moved = [...steps];
        moved.splice(to, 0, ...moved.splice(at, 1));
        const other = { ...document, job: { ...document.job, steps: moved as never } };
        if (customerSteps(other) < least) expect(wrongIn(other), `${to}`).not.toEqual([]);
      }
  },
);

/** A pole between two taps of one line: the nearer has few customers, the farther many. */
const TWO_TAPS = `
  s1    source       sub     ABC  kvLL=12.47
  m0    span         sub-p1  ABC  lengthM=900
  sw1   disconnect   p1-p2   ABC  gang=true loadBreakAmps=600
  sp1   span         p2-p3   ABC  lengthM=60
  ca    disconnect   p3-p4   ABC  gang=true loadBreakAmps=600
  sa    span         p4-p5   ABC  lengthM=60
  lda   load         p5      ABC  kw=20 customers=3
  ga    generator    p5      ABC  kva=30 volts=12470
  cb    disconnect   p3-p6   ABC  gang=true loadBreakAmps=600
  sb    span         p6-p7   ABC  lengthM=60
  ldb   load         p7      ABC  kw=200 customers=80
  gb    generator    p7      ABC  kva=300 volts=12470
  w1    work         p3      ABC
`;

/** Every order of a few things. */
const orders = <Item>(items: readonly Item[]): Item[][] =>
  items.length < 2
    ? [[...items]]
    : items.flatMap((it, at) => orders(items.toSpliced(at, 1)).map((rest) => [it, ...rest]));

// format.md, The job: of safe orders the one with fewest customer-steps, after those out meanwhile and at the worst.
test.each([TWO_TAPS, BETWEEN_TWO, CLAMP])(
  "no other turn of the way back leaves fewer customer-steps, %#",
  (drawing) => {
    const document = planDocument(draw(drawing));
    const { steps } = document.job as unknown as { steps: { do: string; element?: string }[] };
    const begin = steps.findLastIndex((it) => ["release-permit", "confirm"].includes(it.do)) + 1;
    // Each with what comes right before it: its tag off, a look at its volts, everybody clear of it.
    const groups: (typeof steps)[] = [];
    let group: typeof steps = [];
    for (const it of steps.slice(begin)) {
      group.push(it);
      if (!["open", "close", "attach"].includes(it.do)) continue;
      groups.push(group);
      group = [];
    }
    expect(groups.length).toBeGreaterThan(1);
    const least = customerSteps(document);
    for (const other of orders(groups)) {
      const turned = [...steps.slice(0, begin), ...other.flat(), ...group];
      const tried = { ...document, job: { ...document.job, steps: turned as never } };
      if (customerSteps(tried) < least) expect(wrongIn(tried)).not.toEqual([]);
    }
  },
);

const customerSteps = (document: StillhotDocument): number => customersOutIn(rehearse(document)).steps;
const wrongIn = (document: StillhotDocument): string[] => {
  const { steps, findings } = rehearse(document);
  return [...steps.flatMap((it) => it.findings), ...findings]
    .filter(({ severity }) => severity !== "note")
    .map(({ rule }) => rule);
};
