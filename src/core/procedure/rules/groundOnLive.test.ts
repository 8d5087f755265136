import { expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";
import type { Step } from "../../document";
import type { ElementId } from "../../terms";

checkRule(
  "ground-on-live",
  "1910.269(n)(5): found to have no nominal voltage before any ground goes on",
  TAP,
  [
    ["onto the energized line", "ground p1 A", "danger g1"],
    [
      "onto what a generator feeds backwards",
      "open c1; ground p3 A",
      "danger g1",
      "gx generator h1 12 kva=20 volts=240 on=true",
    ],
    ["onto what is dead", "open c1; lift k1; ground p2 A", ""],
    [
      "off while a generator feeds it",
      "open c1; ground p3 A; start gx; unground g1",
      "danger g1",
      "gx generator h1 12 kva=20 volts=240",
    ],
    ["off what is dead", "open c1; lift k1; ground p2 A; unground g1", ""],
    ["onto what another ground holds", "open c1; lift k1; ground p2 A; ground p2 A as g2", ""],
  ],
);

const CABLE = `
  s1   source  sub    ABC  kvLL=12.47
  main span    sub-p1 ABC  lengthM=2000
  c1   cutout  p1-p2  A    fuse=K40
  cb1  span    p2-p3  A    construction=cable lengthM=80
  cb2  span    p3-p4  A    construction=cable lengthM=80
  ld1  load    p4     A    kw=10 customers=3
`;

checkRule(
  "ground-on-live",
  "common practice, no source: a spike shorts the cable that it goes into, as a ground would",
  CABLE,
  [
    ["into a live cable", "test p3 A with spike", "danger p3"],
    ["into a dead one", "open c1 A; test p3 A with spike", ""],
    ["a detector shorts nothing", "check-detector; test p3 A", ""],
    [
      "fed backwards by a customer's machine",
      "open c1 A; test p3 A with spike",
      "danger p3",
      "gx generator p4 A kva=50 volts=12470 on=true",
    ],
  ],
);

test("a spike into a live cable is the fault that a drawn one there is, blows the link, and leaves the cable bad", () => {
  const [spiked] = playAll(draw(CABLE), parseSteps("test p3 A with spike", []));
  const closed = playAll(draw(`${CABLE}\nf1 fault p3 A\nc1 cutout p1-p2 A fuse=K40 open=A`), [
    { do: "close", element: "c1" } as Step,
  ])[0]!;
  expect(spiked!.consequence.kind).toBe("fault");
  expect(spiked!.consequence.amps).toBeCloseTo(closed.consequence.amps, 1);
  expect(spiked!.consequence.amps).toBeGreaterThan(1000);
  expect(spell(spiked!.consequence.text)).toMatch(/a bolted fault, 1958 A through the spike .*40K/);
  expect(spiked!.state.document.system.elements["c1" as ElementId]).toMatchObject({ blown: "A" });
  const again = playAll(spiked!.state.document, parseSteps("refuse c1 A; close c1 A", [])).at(-1)!;
  expect(again.findings.map(({ rule }) => rule)).toContain("onto-fault");
});

test.each([
  ["work there cuts the short out that a spike left", "w1 work p3 A", []],
  ["work at another place leaves it in the cable", "w1 work p4 A", ["onto-fault"]],
])("%s", (_why, workPoint, wanted) => {
  const steps = "test p3 A with spike; work w1; all-clear; refuse c1 A; close c1 A";
  const { findings } = playAll(draw(`${CABLE}\n${workPoint}`), parseSteps(steps, [])).at(-1)!;
  expect(findings.map(({ rule }) => rule).filter((it) => it === "onto-fault")).toEqual(wanted);
});
