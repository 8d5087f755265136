import { expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";

checkRule(
  "load-not-dropped",
  "common practice: opening one way in leaves what another feeds",
  `${TAP}
  d1 disconnect p4-p20 A
  s2 source p20 A kvLL=12.47
  w1 work p3 A
`,
  [
    ["the far end still feeds it", "open c1 with load-break-tool", "note c1"],
    ["the other way in was opened before", "open d1; open c1", ""],
    [
      "what is left open goes back once the work is done and everybody is clear",
      "work w1; all-clear; open c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 normallyOpen=true",
    ],
    ["before that it is told", "open c1", "note c1", "c1 cutout p2-p3 A fuse=K25 normallyOpen=true"],
    [
      "a second round of work at the place begins again",
      "open c1; open d1; work w1; all-clear; close c1; close d1; open c1",
      "note c1",
    ],
    ["while hands are at it", "work w1; open c1", "note c1"],
    ["the side that the job is on", "open c1", "", "w1 work p2 A"],
    [
      "a generator runs behind the meter",
      "open c1",
      "note c1",
      "d1 none\ns2 none\ng1 generator h1 12 kva=20 volts=240 on=true",
    ],
  ],
);

test("the second transformer of a street is named as what carries", () => {
  const banked = draw(`
    s1 source      p0    ABC kvLL=12.47
    x1 cutout      p0-p1 B   fuse=K15 label=x1
    t1 transformer p1-q  B   connection=single kva=50 primaryKv=7.2 secondaryV=240 label=T1
    x2 cutout      p0-p2 B   fuse=K15 label=x2
    t2 transformer p2-q  B   connection=single kva=50 primaryKv=7.2 secondaryV=240 label=T2
    ld load        q     12  connection=delta kw=20 customers=5
    w1 work        p1    B
  `);
  const { findings } = playAll(banked, parseSteps("open x1 B with load-break-tool", [])).at(-1)!;
  const told = findings.find(({ rule }) => rule === "load-not-dropped")!;
  expect(spell(told.message)).toMatch(/^with .*x1.* open, .* is still fed by .*, by way of .*x2.*T2.*T1/);
});
