import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { assess } from "./assess";

/** What is wrong as found, as `severity rule where`, of the rules that speak of broken wires and neutrals. */
const wrongIn = (drawing: string): string =>
  assess(draw(`${LINE}\n${drawing}`))
    .findings.filter(({ rule }) => ["broken-energized", "open-neutral", "leg-volts"].includes(rule))
    .map(({ severity, rule, where }) => `${severity} ${rule} ${where}`)
    .join(", ");

const LINE = `
  s1  source       p1     ABC  kvLL=12.47
  c1  cutout       p1-p2  A
  sp1 span         p2-p3  A    lengthM=100
  t1  transformer  p3-p4  A    connection=single kva=25 primaryKv=7.2 secondaryV=240
  sv  span         p4-h1  12   construction=secondary lengthM=30
  ld1 load         h1     1    connection=wye kw=4
  ld2 load         h1     2    connection=wye kw=1
  h1  point        kind=service earthOhms=100`;

describe("What is wrong as found is told by itself (common practice, no source)", () => {
  test.each([
    ["nothing is", "", ""],
    [
      "a wire that has parted and is fed from one side",
      "sp1 span p2-p3 A parted=A",
      "danger broken-energized sp1",
    ],
    [
      "all of it parted: there is no way back to lose",
      "sp1 span p2-p3 A parted=AN",
      "danger broken-energized sp1",
    ],
    ["the same, cut off", "sp1 span p2-p3 A parted=A\n c1 cutout p1-p2 A open=A", ""],
    ["an open neutral of the line", "sp1 span p2-p3 A lengthM=100 parted=N", "warning open-neutral sp1"],
    [
      "an open service neutral: the light leg goes high",
      "sv span p4-h1 12 construction=secondary lengthM=30 parted=N",
      "danger open-neutral sv, danger leg-volts h1/2",
    ],
    [
      "the same with the line dead",
      "sv span p4-h1 12 construction=secondary parted=N\n c1 cutout p1-p2 A open=A",
      "",
    ],
  ])("%s", (_why, drawing, wanted) => expect(wrongIn(drawing)).toBe(wanted));
});

describe("a motor that is short of a phase is told as found (NEMA MG 1, from memory)", () => {
  const motorsIn = (cutout: string, load = "connection=delta kw=18 kvar=9") =>
    assess(
      draw(`
        s1 source      sub   ABC kvLL=12.47
        c1 cutout      sub-p1 ABC fuse=K30 ${cutout}
        bk transformer p1-p2 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=240
        mb main        p2-h  ABC
        mo load        h     ABC ${load}
        h  point       kind=service
      `),
    )
      .findings.filter(({ rule }) => rule === "single-phasing")
      .map(({ severity, where }) => `${severity} ${where}`)
      .join(", ");

  test.each([
    ["all of its phases are there", "", undefined, ""],
    ["a link of its bank has blown", "blown=B", undefined, "warning mo"],
    ["all of them have: it stands still", "blown=ABC", undefined, ""],
    ["nothing runs there", "blown=B", "connection=delta kw=0", ""],
    ["a motor of which only the kvar are known", "blown=B", "connection=delta kw=0 kvar=9", "warning mo"],
    ["lights, each between a phase and the neutral", "blown=B", "connection=wye kw=18", ""],
  ])("%s", (_why, cutout, load, wanted) => expect(motorsIn(cutout, load)).toBe(wanted));
});
