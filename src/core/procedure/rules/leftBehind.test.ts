import { describe, expect, test } from "vitest";
import { draw, TAP } from "../../../../tests/support/jobNotation";
import { rehearse } from "..";

/** What is left at the end of some steps: `severity where`. */
const left = (steps: string, more = ""): string =>
  rehearse(draw(`${TAP}\n${more}`, steps))
    .findings.filter((it) => it.rule === "left-behind")
    .map(({ severity, where }) => `${severity} ${where}`)
    .join(", ");

describe("left-behind: common practice: the line is left in service", () => {
  test.each([
    ["a ground, and the link that blew on it", "open c1; ground p3 A; close c1", "warning c1, warning g1"],
    ["a tag", "open c1; tag c1; close c1", "warning c1"],
    ["a cover", "cover p1", "warning p1"],
    ["a permit", "request-permit; receive-permit; confirm", "warning permit"],
    [
      "a permit that was handed back to the crew that held it",
      "hand-over permit=true to B; hand-over permit=true to A",
      "",
      "job crew=B permit=held permitHolder=A",
    ],
    [
      "a permit that was taken over and kept",
      "hand-over permit=true to B",
      "warning permit",
      "job crew=B permit=held permitHolder=A",
    ],
    ["a permit asked for and never used", "request-permit", "warning permit"],
    ["a switch", "open c1", "warning c1"],
    ["a block", "block k1", "warning k1"],
    ["a barrel", "remove-barrel c1", "warning c1"],
    ["a lead", "cut l1", "warning l1", "l1 lead p3-p20 A"],
    [
      "a lead that the job leaves cut and nobody cut",
      "brief",
      "warning l1",
      'l1 lead p3-p20 A\njob leave={"l1":"open"}',
    ],
    ["a lead that the job leaves cut", "cut l1", "", 'l1 lead p3-p20 A\njob leave={"l1":"open"}'],
    [
      "a set that was handed over is the crew's own to take off",
      "hand-over gx to Crew_2; unground gx",
      "",
      "gx ground p9 A cable=2/0 by=Crew_1\nl1 lead p8-p9 A\njob crew=Crew_2",
    ],
    [
      "and to leave on",
      "hand-over gx to Crew_2",
      "warning gx",
      "gx ground p9 A cable=2/0 by=Crew_1\nl1 lead p8-p9 A\njob crew=Crew_2",
    ],
    [
      "a ground set that was there before",
      "unground gx",
      "warning k1, warning gx",
      "gx ground p2 A cable=2/0\nk1 clamp p1-p2 A open=A",
    ],
    [
      "what was found open, and nothing keeps it so",
      "brief",
      "warning c1",
      "c1 cutout p2-p3 A fuse=K25 open=A",
    ],
    ["what hangs on a part without supply", "open k1", "warning k1", "c1 cutout p2-p3 A fuse=K25 open=A"],
    [
      "what was found open before a ground set that is on still",
      "brief",
      "",
      "k1 clamp p1-p2 A open=A\ngx ground p2 A cable=2/0 by=Crew_1",
    ],
    ["a machine started", "start g9", "warning g9", "g9 generator h1 12 kva=6 volts=240"],
    [
      "a machine stopped and started again",
      "stop g9; start g9",
      "warning g9",
      "g9 generator h1 12 kva=6 volts=240 on=true",
    ],
    ["a machine stopped", "stop g9", "", "g9 generator h1 12 kva=6 volts=240 on=true"],
    ["what another has tagged", "brief", "", "c1 cutout p2-p3 A fuse=K25 open=A tagged=true"],
    ["what is normally open", "brief", "", "c1 cutout p2-p3 A fuse=K25 open=A normallyOpen=true"],
    [
      "what is normally open, and feeds what has no other supply",
      "close c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 open=A normallyOpen=true",
    ],
    [
      "what is normally open, and closed beside another way",
      "close c9",
      "warning c9",
      "c9 cutout p2-p3 A fuse=K25 open=A normallyOpen=true",
    ],
    ["what would put volts on a broken wire", "open c1", "", "sp1 span p3-p4 A lengthM=60 parted=A"],
    ["nothing", "open c1; tag c1; untag c1; close c1", ""],
    [
      "a link renewed and closed is a repair",
      "refuse c1; close c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 blown=A",
    ],
    ["a lead remade is one too", "join l1", "", "l1 lead p3-p20 A cut=A"],
    ["the job says that it stays", "open c1; note c1 text stays open for the next crew", ""],
    ["it says so of another thing", "open c1; note k1 text stays as it is", "warning c1"],
    ["a note without a reason excuses nothing", "open c1; note c1", "warning c1"],
    ["while people are on the line the job is not at its end", "open c1; work w1", "note c1"],
  ])("%s", (_why, steps, wanted, more = "") => {
    expect(left(steps, more)).toBe(wanted);
  });
});

test("detector-check: the last test is followed by a check of the detector too", () => {
  const atEnd = (steps: string) => rehearse(draw(TAP, steps)).findings.map((it) => it.rule);
  expect(atEnd("lift k1; note k1 text stays; check-detector; test p2 A")).toEqual(["detector-check"]);
  expect(atEnd("check-detector; test p2 A; check-detector")).toEqual([]);
});
