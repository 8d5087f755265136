import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "grounds-left",
  "1910.269(m)(3)(xiii): no one begins to re-energize until all protective grounds are off",
  TAP,
  [
    ["closed onto its own ground", "open c1; ground p3 A; close c1", "danger c1"],
    ["attached onto it", "open c1; lift k1; ground p2 A; attach k1", "danger k1"],
    ["the ground is off", "open c1; ground p3 A; unground g1; close c1", ""],
    [
      "what is grounded was fed by a machine already",
      "open c1; ground p3 A; close c1",
      "danger c1",
      "g9 generator p5 A kva=20 volts=12470 on=true",
    ],
    ["the ground is beyond an open thing", "open c1; open c2; ground p5 A; close c1", ""],
    ["a fault is another rule", "close c1", "", "c1 cutout p2-p3 A fuse=K25 open=A\nf1 fault p4 A"],
  ],
);

checkRule(
  "grounds-left",
  "common practice, no source: a splice energizes as a switch does",
  `
  s1  source     a   ABC kvLL=12.47
  sp1 span       a-b ABC lengthM=10 parted=A
  d1  disconnect b-c ABC gang=true
  w1  work       b   A   does=sp1
`,
  [
    [
      "a live wire is joined to the grounded one, with sticks",
      "open d1; ground b A; work w1 method=sticks",
      "danger w1",
    ],
    ["the ground is off", "open d1; ground b A; unground g1; work w1 method=sticks", ""],
    ["the ground is beyond an open thing", "open d1; ground c A; work w1 method=sticks", ""],
  ],
);
