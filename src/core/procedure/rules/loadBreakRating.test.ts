import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "load-break-rating",
  "1910.269(l)(12)(i): the device must be designed to interrupt the current involved",
  `${TAP}
  ld1 load h1 12 connection=delta kw=300 customers=3
  t1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240
`,
  [
    [
      "an arc chute for 20 A",
      "open c1",
      "danger c1",
      "c1 cutout p2-p3 A loadBreak=arc-chute arcChuteAmps=20",
    ],
    ["an arc chute for 100 A", "open c1", "", "c1 cutout p2-p3 A loadBreak=arc-chute arcChuteAmps=100"],
    ["the tool is good for 600 A", "open c1 with load-break-tool", ""],
    [
      "and no more",
      "open c1 with load-break-tool",
      "danger c1",
      "ld1 load h1 12 connection=delta kw=9000\nt1 transformer p5-p6 A connection=single kva=50000 primaryKv=7.2 secondaryV=240\ns1 source sub ABC kvLL=12.47 z1Ohms=[0.01,0.05] z0Ohms=[0.01,0.05]\nmain span sub-p1 ABC lengthM=50",
    ],
    ["an elbow over its rating", "open c1", "danger c1", "c1 elbow p2-p3 A loadBreakAmps=30"],
    ["an elbow within it", "open c1", "", "c1 elbow p2-p3 A"],
    ["a switch over its rating", "open c1", "danger c1", "c1 disconnect p2-p3 A loadBreakAmps=10"],
    ["a recloser within what it interrupts", "open c1", "", "c1 recloser p2-p3 A interruptingAmps=2000"],
    ["a bare cutout is the other rule", "open c1", ""],
  ],
);
