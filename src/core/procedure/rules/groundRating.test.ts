import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "ground-rating",
  "1910.269(n)(4)(i), (ii): grounding equipment carries the largest fault current possible for the clearing time, and is at least No. 2 copper",
  `${TAP}
  s1   source sub ABC kvLL=12.47 z1Ohms=[0.02,0.3] z0Ohms=[0.02,0.3]
  main span   sub-p1 ABC lengthM=20
`,
  [
    [
      "some 22 kA at X/R 10 through 1/0, which withstands 17 700 A for half a second (25 kA for 15 cycles, constant I²t)",
      "open c1; lift k1; ground p2 A cable 1/0",
      "danger g1",
    ],
    ["4/0 withstands 33 kA", "open c1; lift k1; ground p2 A cable 4/0", ""],
    [
      "1/0 is enough for the far end of a long line",
      "open c1; lift k1; ground p2 A cable 1/0",
      "",
      "main span sub-p1 ABC lengthM=2000",
    ],
    ["no size is given: it counts as No. 2", "open c1; lift k1; ground p2 A", "note g1, danger g1"],
    ["smaller than No. 2", "open c1; lift k1; ground p2 A cable 4", "danger g1, danger g1"],
    [
      "a set found there, when work begins",
      "open c1; lift k1; work w1",
      "danger gx",
      "gx ground p2 A cable=1/0",
    ],
  ],
);
