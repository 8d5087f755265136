import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "onto-fault",
  "1910.269(m)(3)(xiii), and common practice: nothing is energized that is not mended",
  TAP,
  [
    ["onto a fault that is drawn", "open c2; close c2", "danger c2", "f1 fault p5 A"],
    ["onto an arrester that has failed", "open c2; close c2", "danger c2", "la1 arrester p5 A failed=A"],
    [
      "onto a wire that has parted, from its near end",
      "open c1; close c1",
      "danger c1",
      "sp1 span p3-p4 A parted=A",
    ],
    ["a fault that was cut off before", "open c2; open c1; close c1", "", "f1 fault p5 A"],
    [
      "a fault that the work has cleared",
      "open c2; work w1; close c2",
      "",
      "f1 fault p5 A\nw1 work p5 A does=f1",
    ],
    [
      "a wire that the work has joined",
      "open c1; work w1; close c1",
      "",
      "sp1 span p3-p4 A parted=A\nw1 work p3 A does=sp1",
    ],
    ["a neutral that has parted is another rule's", "open c1; close c1", "", "sp1 span p3-p4 A parted=N"],
    ["onto the crew's own ground is another rule's", "open c1; ground p3 A; close c1", ""],
    ["nothing is wrong beyond it", "open c2; close c2", ""],
  ],
);

checkRule(
  "onto-fault",
  "common practice, no source: what a bank's other phases held at some volts is still closed onto",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  c1 cutout p1-p2 ABC fuse=K15 open=B
  la1 arrester p2 B failed=B
  t1 transformer p2-p3 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=480 neutral=false
`,
  [
    ["onto the failed arrester of the open phase", "close c1 B", "danger c1"],
    ["onto a sound one", "close c1 B", "", "la1 arrester p2 B"],
  ],
);

const PARTED = `
  s1  source     a   ABC kvLL=12.47
  sp1 span       a-b ABC lengthM=10 parted=A
  d1  disconnect b-c ABC gang=true
  w1  work       b   A   does=sp1
`;

checkRule("onto-fault", "common practice, no source: a splice closes as a switch does", PARTED, [
  ["a live wire is joined to one with a fault on it", "work w1 method=sticks", "danger w1", "f1 fault c A"],
  ["the fault is cut off", "open d1; work w1 method=sticks", "", "f1 fault c A"],
  ["nothing feeds it", "work w1 method=sticks", "", "f1 fault c A\ns1 source a ABC kvLL=12.47 on=false"],
]);

checkRule(
  "onto-fault",
  "common practice, no source: a splice too closes onto what a bank's other phases held at some volts",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p1 ABC lengthM=2000
  sp1 span p1-p2 ABC lengthM=30 parted=B
  la1 arrester p2 B failed=B
  t1 transformer p2-p3 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=480 neutral=false
  w1 work p1 B does=sp1
`,
  [
    ["onto the failed arrester of the parted phase", "work w1 method=sticks", "danger w1"],
    ["onto a sound one", "work w1 method=sticks", "", "la1 arrester p2 B"],
  ],
);
