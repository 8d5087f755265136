import { describe, expect, test } from "vitest";
import { draw } from "../../../tests/support/jobNotation";
import { spell } from "../../../tests/support/words";
import { assess } from "./assess";

/** Faults that stand in a drawing, as `severity where`, with what is said of who would see them. */
const standing = (drawing: string): string =>
  assess(draw(`${LINE}\n${drawing}`))
    .findings.filter(({ rule }) => rule === "fault-stands")
    .map(({ severity, where, message }) => `${severity} ${where}: ${spell(message)}`)
    .join(", ");

const LINE = `
  s1  source  p1     ABC  kvLL=12.47
  c1  cutout  p1-p2  ABC  fuse=K65
  sp1 span    p2-p3  ABC  lengthM=300
  f1  fault   p3     B    to=earth ohms=40`;

const UNEARTHED = `
  s1  source  p1     ABC  kvLL=4.8 earthed=false
  c1  cutout  p1-p2  ABC  fuse=K65 neutral=false
  sp1 span    p2-p3  ABC  lengthM=300 neutral=false`;

describe("A fault that is fed as drawn is told (common practice, no source)", () => {
  test.each([
    [
      "180 A through a 65K link, which melts on it",
      "",
      /^warning f1: .* 65K link of .* clears its 1\d\d A within /,
    ],
    [
      "90 A: a wire on dry ground never melts a 65K link",
      "f1 fault p3 B to=earth ohms=80",
      /^danger f1: .* 65K link of .* may hold/,
    ],
    [
      "a solid blade sees nothing: the source would have to",
      "c1 cutout p1-p2 ABC fuse=solid",
      /^danger f1: .*own protection/,
    ],
    [
      "a recloser trips at what nobody drew",
      "c1 recloser p1-p2 ABC",
      /^danger f1: .*at what it trips is not drawn/,
    ],
    [
      "one phase at earth of an unearthed line",
      `${UNEARTHED}\n f1 fault p3 B to=earth ohms=5`,
      /^danger f1: .*source is not earthed/,
    ],
    ["a failed arrester is one too", "f1 none\n a1 arrester p3 B failed=B", /^warning a1: .* 65K link/],
    [
      "a second station behind a solid blade goes on feeding it",
      "s2 source p5 ABC kvLL=12.47\n c2 cutout p5-p4 ABC fuse=solid\n c1 cutout p1-p2 ABC fuse=K10\n sp2 span p3-p4 ABC lengthM=300",
      /^danger f1: .*own protection/,
    ],
    [
      "a second station behind a link that melts too",
      "s2 source p5 ABC kvLL=12.47\n c2 cutout p5-p4 ABC fuse=K10\n c1 cutout p1-p2 ABC fuse=K10\n sp2 span p3-p4 ABC lengthM=300",
      /^warning f1: .* 10K link/,
    ],
    [
      "a link on one of its two phases, a solid blade on the other",
      "c1 cutout p1-p2 A fuse=K65\n c2 cutout p1-p2 BC fuse=solid\n f1 fault p3 AB to=earth ohms=5",
      /^danger f1: .*own protection/,
    ],
    [
      "a machine goes on feeding it once the link has melted",
      "g9 generator p3 ABC kva=500 volts=12470 on=true\n f1 fault p3 B to=earth ohms=5",
      /^danger f1: .*generator .* goes on feeding it, whatever link melts/,
    ],
    [
      "a machine behind a link of its own, which melts on what the machine drives through it",
      "g9 generator p4 ABC kva=5000 volts=12470 on=true\n c9 cutout p4-p3 ABC fuse=K6\n f1 fault p3 B to=earth ohms=5",
      /^warning f1: .* clears its /,
    ],
    [
      "a machine behind a link of its own that holds what it drives through it",
      "g9 generator p4 ABC kva=500 volts=12470 on=true\n c9 cutout p4-p3 ABC fuse=K140\n f1 fault p3 B to=earth ohms=5",
      /^danger f1: .*140K link of .* may hold/,
    ],
    [
      "a machine behind a link that carries more for the load beside it, as drawn, than the machine drives through it",
      `g9 generator p4 ABC kva=20 volts=12470 on=true
       l9 load p4 ABC kw=3000
       c9 cutout p4-p3 ABC fuse=K6
       f1 fault p3 B to=earth ohms=40
       c1 cutout p1-p2 ABC fuse=K6`,
      /^danger f1: .* 6K link of .* may hold/,
    ],
    [
      "a machine that stands still",
      "g9 generator p3 ABC kva=500 volts=12470\n f1 fault p3 B to=earth ohms=5",
      /^warning f1: .* 65K link/,
    ],
    ["nothing feeds it", "c1 cutout p1-p2 ABC fuse=K65 open=B", /^$/],
    ["the source is off", "s1 source p1 ABC kvLL=12.47 on=false", /^$/],
    ["there is none", "f1 none", /^$/],
  ])("%s", (_why, drawing, wanted) => expect(standing(drawing)).toMatch(wanted));

  test("what stands there is told: the wire's own volts on its ohms, and line volts on the phases beside it", () => {
    const of = (drawing: string) =>
      spell(assess(draw(`${LINE}\n${drawing}`)).findings.find(({ rule }) => rule === "fault-stands")!.help!);
    expect(of("f1 fault p3 B to=earth ohms=80")).toMatch(/stand at 7\d{3} V to earth as drawn/);
    expect(of(`${UNEARTHED}\n f1 fault p3 B to=earth ohms=5`)).toMatch(
      /a phase beside it stands at 4\d{3} V/,
    );
  });
});
