import { expect, test } from "vitest";
import { checkRule, draw, playAll, stepsOf, TAP } from "../../../../tests/support/jobNotation";
import { spell } from "../../../../tests/support/words";

const DEAD = "open c1 A; tag c1; check-detector; test p2 A; test p3 A; check-detector";

checkRule(
  "work-not-safe",
  "1910.269(n)(2): to work a line as dead it is both deenergized under (m) and grounded under (n)",
  TAP,
  [
    ["live", "work w1", "danger w1"],
    ["one mistake away", "open c1; lift k1; work w1", "danger w1"],
    [
      "isolated, not tested and not grounded",
      "open c1; tag c1; block c1; lift k1; tag k1; block k1; work w1",
      "danger w1",
      "ld1 load h1 12 connection=delta kw=8",
    ],
    [
      "grounded without a test",
      "open c1; tag c1; block c1; lift k1; tag k1; block k1; ground p2 A cable 2/0; work w1",
      "danger w1",
    ],
    [
      "tested and grounded",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1",
      "",
    ],
    ["hot-stick work goes by its own rules", "work w1 with clamp-stick", ""],
  ],
);

checkRule(
  "work-not-safe",
  "NIOSH FACE 90-02: a conductor that has parted has two ends, each grounded for itself",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  c1 cutout p1-p2 A
  sp1 span p2-p3 A parted=A
  w1 work p2 A does=sp1
`,
  [
    ["one end grounded", `${DEAD}; ground p2 A cable 2/0 as g1; work w1`, "danger w1"],
    ["both", `${DEAD}; ground p2 A cable 2/0 as g1; ground p3 A cable 2/0 as g2; work w1`, ""],
  ],
);

checkRule(
  "work-not-safe",
  "1910.269(n)(3): a conductor that is taken away leaves two sides, each grounded for itself or bonded across",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  c1 cutout p1-p2 A
  sp1 span p2-p3 A leave=gone
  sp2 span p3-p4 A
  w1 work p2 A does=sp1
`,
  [
    ["the side that stays not grounded", `${DEAD}; ground p2 A cable 2/0 as g1; work w1`, "danger w1"],
    [
      "grounded where what stays goes on",
      `${DEAD}; ground p2 A cable 2/0 as g1; ground p4 A cable 2/0 as g2; work w1`,
      "",
    ],
    ["bonded across it", `${DEAD}; ground p2 A cable 2/0 as g1; work w1`, "", "j1 lead p2-p3 A"],
    ["nothing stays beyond it", `${DEAD}; ground p2 A cable 2/0 as g1; work w1`, "", "sp2 none"],
    [
      "a span that is mended in place",
      `${DEAD}; ground p2 A cable 2/0 as g1; work w1`,
      "",
      "sp1 span p2-p3 A",
    ],
  ],
);

const BOTH_ENDS =
  "open c1 A; tag c1; open e2 A; tag e2; check-detector; test p2 A; test p4 A; check-detector; ground p2 A cable 2/0 as g1; ground p4 A cable 2/0 as g2";

checkRule(
  "work-not-safe",
  "1910.269(t)(5), from memory, and common practice: a cable is identified and proven where it is cut, and held from both ends",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  c1 cutout p1-p2 A
  cb1 span p2-p3 A construction=cable lengthM=80
  cb2 span p3-p4 A construction=cable lengthM=80
  e2 elbow p4-p5 A
  cb3 span p5-p6 A construction=cable lengthM=80
  ld1 load p6 A kw=10 customers=3
  w1 work p3 A
`,
  [
    ["traced and spiked, held from both ends", `${BOTH_ENDS}; test p3 A with spike; work w1`, ""],
    ["nobody spiked it", `${BOTH_ENDS}; work w1`, "danger w1"],
    ["traced from its grounded ends", `${BOTH_ENDS}; test p3 A with tracer; work w1`, ""],
    [
      "traced before any ground closes the way round",
      `test p3 A with tracer; ${BOTH_ENDS}; work w1`,
      "danger w1",
    ],
    [
      "a detector touches nothing there",
      `${BOTH_ENDS}; check-detector; test p3 A; check-detector; work w1`,
      "danger w1",
    ],
    [
      "held from one end",
      `${BOTH_ENDS}; test p3 A with spike; unground g2; check-detector; test p2 A; check-detector; test p3 A with spike; work w1`,
      "danger w1",
    ],
    [
      "switched again since: the spike proves nothing any more",
      `${BOTH_ENDS}; test p3 A with spike; close e2; work w1`,
      "danger w1",
    ],
    ["at an end it is tested as any conductor is", `${BOTH_ENDS}; work w1`, "", "w1 work p2 A"],
  ],
);

const ISOLATED =
  "open c1 ABC; tag c1; open sw3; tag sw3; check-detector; test p2 ABC; test p3 ABC; check-detector; ground p2 ABC cable 4/0 as g1";

checkRule(
  "work-not-safe",
  "1910.269(n)(2): both sides of a bank between two lines are held; what customers are fed from has a rule of its own",
  `
  s1   source       sub    ABC  kvLL=12.47
  c1   cutout       sub-p2 ABC  fuse=K65
  t1   transformer  p2-p3  ABC  connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=4160
  sw3  disconnect   p3-p4  ABC  gang=true loadBreakAmps=600
  ld1  load         p4     ABC  kw=100 customers=20
  w1   work         p2     ABC  does=t1
`,
  [
    ["the low side has no set", `${ISOLATED}; work w1`, "danger w1"],
    ["both sides held", `${ISOLATED}; ground p3 ABC cable 4/0 as g2; work w1`, ""],
    [
      "its low side is no line",
      `${ISOLATED}; work w1`,
      "",
      "t1 transformer p2-p3 ABC connection=Yg-Yg kva=500 primaryKv=12.47 secondaryV=480",
    ],
  ],
);

checkRule(
  "work-not-safe",
  "common practice, no source: what comes down for good with all that hangs on it leaves nothing bare",
  `
  s1   source       sub    ABC  kvLL=12.47
  k1   clamp        sub-p1 A    leave=gone
  c1   cutout       p1-p2  A    fuse=K10 leave=gone
  t1   transformer  p2-p3  A    connection=single kva=25 primaryKv=7.2 secondaryV=240 leave=gone
  w1   work         p1     A    does=k1,c1,t1
`,
  [
    [
      "held at the cutout's top alone",
      "open c1 A; lift k1 A with clamp-stick; block k1; tag k1; check-detector; test p1 A; check-detector; ground p1 A cable 2/0 as g1; work w1",
      "",
    ],
    [
      "a line goes on beyond it",
      "open c1 A; lift k1 A with clamp-stick; block k1; tag k1; check-detector; test p1 A; check-detector; ground p1 A cable 2/0 as g1; work w1",
      "danger w1",
      "sp9 span p2-p9 A",
    ],
  ],
);

test.each([
  ["live", "work w1", /^work begins at .+ while it is live: /],
  [
    "one mistake away",
    "open c1; lift k1; work w1",
    /^work begins at .+, which one mistake could make live: /,
  ],
])("a whole sentence says how the work stands: %s", (_why, steps, wanted) => {
  const document = draw(TAP, steps);
  const { findings } = playAll(document, stepsOf(document)).at(-1)!;
  expect(spell(findings.find(({ rule }) => rule === "work-not-safe")!.message)).toMatch(wanted);
});
