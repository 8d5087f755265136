import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "ground-return",
  "1910.269(n)(4)(iii): impedance low enough that protective devices are not delayed",
  TAP,
  [
    ["to a rod alone", "open c1; ground p3 A to earth", "warning g1"],
    [
      "to a neutral that is broken on the way home",
      "open c1; ground p4 A",
      "warning g1",
      "sp1 span p3-p4 A lengthM=60 parted=N",
    ],
    ["to the neutral", "open c1; ground p3 A", ""],
    ["to both", "open c1; ground p3 A to both", ""],
    ["broken since it went on", "open c1; ground p4 A; cut sp1 N; work w1", "warning g1"],
    ["a set found there on a rod", "open c1; work w1", "warning gx", "gx ground p2 A to=earth"],
  ],
);
