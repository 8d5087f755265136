import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "single-phasing",
  "common practice, no source: a motor that ran on two phases is off before the third comes back",
  `
  s1   source       sub    ABC  kvLL=12.47
  main span         sub-p1 ABC  lengthM=2000
  c1   cutout       p1-p2  ABC  fuse=K15 blown=B
  t1   transformer  p2-p3  ABC  connection=D-Yg kva=75 primaryKv=12.47 secondaryV=480
  mn1  main         p3-h1  ABC
  ld1  load         h1     ABC  connection=delta kw=30
  w1   work         p2     ABC
`,
  [
    ["the motor is on", "open c1 AC; refuse c1; close c1 A", "warning ld1"],
    ["its main is open", "open mn1; open c1 AC; refuse c1; close c1 A", ""],
    [
      "the motor holds the open leg up all the while: nothing was dead, and its third phase comes back",
      "refuse c1 C; close c1 C",
      "warning ld1",
      `
      c1 cutout p1-p2 BC fuse=K8 blown=C
      t1 transformer p2-p3 BC connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=bc
      ld1 load h1 ABC connection=delta kw=20 kvar=14
      w1 work p2 B`,
    ],
    [
      "the same, its main open",
      "open mn1; refuse c1 C; close c1 C",
      "",
      `
      c1 cutout p1-p2 BC fuse=K8 blown=C
      t1 transformer p2-p3 BC connection=openY-openD kva=50 primaryKv=12.47 secondaryV=240 midTap=bc
      ld1 load h1 ABC connection=delta kw=20 kvar=14
      w1 work p2 B`,
    ],
    ["no link had blown", "open c1 ABC; close c1 A", "", "c1 cutout p1-p2 ABC fuse=K15"],
    [
      "houses run on any phase",
      "open c1 AC; refuse c1; close c1 A",
      "",
      "ld1 load h1 ABC connection=wye kw=30",
    ],
  ],
);
