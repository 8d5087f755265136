import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "ferroresonance",
  "IEEE C57.105 (from memory): ungrounded primary, single-pole switching, cable between, little load",
  `
  s1   source      sub    ABC kvLL=12.47
  c1   cutout      sub-p1 ABC fuse=K25
  sp1  span        p1-p2  ABC lengthM=300 construction=cable
  t1   transformer p2-p3  ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480
  ld1  load        p3     ABC connection=wye kw=1
  w1   work        p2     A
`,
  [
    ["one pole of three is opened", "open c1 A", "warning c1"],
    ["all three one by one", "open c1 ABC", "warning c1"],
    ["one pole is closed", "close c1 A", "warning c1", "c1 cutout sub-p1 ABC fuse=K25 open=ABC"],
    [
      "one that is drawn from the bank to the supply",
      "open c1 A",
      "warning c1",
      "c1 cutout p1-sub ABC fuse=K25",
    ],
    ["a gang switch", "open c1", "", "c1 disconnect sub-p1 ABC gang=true"],
    ["enough load on it", "open c1 A", "", "ld1 load p3 ABC connection=wye kw=8"],
    ["no cable", "open c1 A", "", "sp1 span p1-p2 ABC lengthM=300"],
    [
      "a grounded wye is no absolute safeguard (Torres-Garcia et al., from the abstract)",
      "open c1 A",
      "note c1",
      "t1 transformer p2-p3 ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=480",
    ],
    [
      "a grounded wye on a delta",
      "open c1 A",
      "note c1",
      "t1 transformer p2-p3 ABC connection=Yg-D kva=150 primaryKv=12.47 secondaryV=480\nld1 load p3 ABC connection=delta kw=1",
    ],
    [
      "a grounded wye with enough load",
      "open c1 A",
      "",
      "t1 transformer p2-p3 ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=480\nld1 load p3 ABC connection=wye kw=8",
    ],
    [
      "a grounded wye and a delta on one cable: the delta is said",
      "open c1 A",
      "warning c1",
      "t2 transformer p2-p4 ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=480",
    ],
    [
      "a single unit to the neutral",
      "open c1 A",
      "",
      "t1 transformer p2-p3 A connection=single kva=50 primaryKv=7.2 secondaryV=240 secondary=two-wire\nld1 load p3 A connection=wye kw=1",
    ],
    [
      "a floating wye",
      "open c1 A",
      "warning c1",
      "t1 transformer p2-p3 ABC connection=Y-D kva=150 primaryKv=12.47 secondaryV=480\nld1 load p3 ABC connection=delta kw=1",
    ],
    ["dead on both sides", "open c1 A", "", "s1 source sub ABC kvLL=12.47 on=false"],
  ],
);
