import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "neutral-volts",
  "common practice: a neutral at a dangerous voltage is treated as live",
  `${TAP}
  sp1 span p3-p4 A lengthM=60
  p4 point earthOhms=100
`,
  [
    [
      "the neutral of the tap is cut under load",
      "cut sp1 N",
      "danger h1/N",
      "p5 point earthOhms=500\np6 point earthOhms=500\nh1 point kind=service earthOhms=500",
    ],
    ["a whole neutral", "open c1", ""],
  ],
);
