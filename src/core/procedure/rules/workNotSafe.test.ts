import { checkRule, TAP } from "../../../../tests/support/jobNotation";

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
