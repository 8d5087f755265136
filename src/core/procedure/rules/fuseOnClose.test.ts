import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "fuse-on-close",
  "common practice: a link holds 12 times full load for 0.1 s and 25 times for 0.01 s, the load that comes back cold, and no fault",
  TAP,
  [
    ["25 kVA through a 10K link: 42 A for 0.1 s against 128 A", "open c2; close c2", ""],
    [
      "500 kVA through a 25K link: 833 A for 0.1 s against 350 A, and the 10K behind it",
      "open c1; close c1",
      "warning c1, warning c2",
      "t1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240",
    ],
    [
      "the same where both cutouts are drawn from the load to the supply",
      "open c1; close c1",
      "warning c1, warning c2",
      "c1 cutout p3-p2 A fuse=K25\nc2 cutout p5-p4 A fuse=K10\nt1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240",
    ],
    [
      "a clamp upstream makes the same links carry it",
      "lift k1; attach k1",
      "warning c1, warning c2",
      "t1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240",
    ],
    [
      "the load comes back twice as large as it was",
      "open c2; close c2",
      "warning c2",
      "ld1 load h1 12 connection=delta kw=80\nt1 transformer p5-p6 A connection=single kva=50 primaryKv=7.2 secondaryV=240",
    ],
    ["closed onto a fault, the nearest link goes first", "open c2; close c2", "warning c2", "f1 fault p5 A"],
    ["closed onto a ground", "open c1; ground p3 A; close c1", "warning c1"],
    [
      "a solid blade has no link",
      "open c1; close c1",
      "",
      "c1 cutout p2-p3 A fuse=solid\nt1 transformer p5-p6 A connection=single kva=500 primaryKv=7.2 secondaryV=240\nc2 cutout p4-p5 A fuse=solid",
    ],
  ],
);
