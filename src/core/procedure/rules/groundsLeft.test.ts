import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "grounds-left",
  "1910.269(m)(3)(xiii): no one begins to re-energize until all protective grounds are off",
  TAP,
  [
    ["closed onto its own ground", "open c1; ground p3 A; close c1", "danger c1"],
    ["attached onto it", "open c1; lift k1; ground p2 A; attach k1", "danger k1"],
    ["the ground is off", "open c1; ground p3 A; unground g1; close c1", ""],
    ["the ground is beyond an open thing", "open c1; open c2; ground p5 A; close c1", ""],
    ["a fault is another rule", "close c1", "", "c1 cutout p2-p3 A fuse=K25 open=A\nf1 fault p4 A"],
  ],
);
