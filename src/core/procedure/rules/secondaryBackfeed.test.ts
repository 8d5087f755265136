import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "secondary-backfeed",
  "1910.269(m)(3)(ii) known sources: a generator at a customer feeds a transformer backwards",
  `${TAP}
  w1 work p5 A
  mb1 main h1-h2 12
  ld1 load h2 12 connection=delta kw=8 customers=3
  h2 point kind=service
`,
  [
    ["the transformer is worked on with its customers on it", "open c2; work w1", "danger t1"],
    ["the secondary is grounded", "open c2; ground p6 12 cable 2/0; work w1", ""],
    ["grounded at the meter is grounded", "open c2; ground h1 12; work w1", ""],
    ["one leg only", "open c2; ground p6 1; work w1", "danger t1"],
    ["every meter is pulled", "open c2; pull m1; work w1", ""],
    ["a main that is open and no more", "open c2; open mb1; work w1", "danger t1"],
    ["a main open, tagged and blocked", "open c2; open mb1; tag mb1; block mb1; work w1", ""],
    [
      "one of two meters is pulled",
      "open c2; pull m1; work w1",
      "danger t1",
      "ld3 load p6 12 kw=1 connection=delta customers=1",
    ],
    [
      "another transformer on the same secondary",
      "open c2; pull m1; work w1",
      "danger t1",
      "t9 transformer p1-p6 A connection=single kva=25 primaryKv=7.2 secondaryV=240",
    ],
    [
      "a third winding with a customer on it, its secondary grounded",
      "open c2; ground p6 12 cable 2/0; work w1",
      "danger t1",
      "t1 threeWinding p5-p6 A connection=single kva=50 primaryKv=7.2 secondaryV=240 thirdV=277 alt=p60\np60 point\nld9 load p60 A kw=5 customers=1",
    ],
    [
      "both low sides grounded",
      "open c2; ground p6 12 cable 2/0; ground p60 A cable 2/0; work w1",
      "",
      "t1 threeWinding p5-p6 A connection=single kva=50 primaryKv=7.2 secondaryV=240 thirdV=277 alt=p60\np60 point\nld9 load p60 A kw=5 customers=1",
    ],
    [
      "a lead away from the bushing",
      "open c2; work w1",
      "danger t1",
      "c2 cutout p4-p50 A fuse=K10\nl1 lead p50-p5 A\nw1 work p50 A",
    ],
    [
      "a lead away, the secondary grounded",
      "open c2; ground p6 12 cable 2/0; work w1",
      "",
      "c2 cutout p4-p50 A fuse=K10\nl1 lead p50-p5 A\nw1 work p50 A",
    ],
    [
      "beyond a lead that is cut",
      "open c2; cut l1; work w1",
      "",
      "c2 cutout p4-p50 A fuse=K10\nl1 lead p50-p5 A\nw1 work p50 A",
    ],
    [
      "a dead-front connector away from the bushing",
      "open c2; work w1",
      "danger t1",
      "c2 cutout p4-p50 A fuse=K10\ne1 elbow p50-p5 A\nw1 work p50 A",
    ],
    [
      "beyond one that is parked",
      "open c2; open e1; work w1",
      "",
      "c2 cutout p4-p50 A fuse=K10\ne1 elbow p50-p5 A\nw1 work p50 A",
    ],
    ["changed by work that stands above its cutout", "open c1; work w1", "danger t1", "w1 work p4 A does=t1"],
    ["work elsewhere", "open c2; work w1", "", "w1 work p3 A"],
    ["a load that nobody owns", "open c2; work w1", "", "ld1 load h2 12 kw=1 connection=delta"],
  ],
);
