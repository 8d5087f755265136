import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "stand-clear",
  "1910.269(l)(9): an expulsion fuse is operated with a rated tool, out of its exhaust path",
  TAP,
  [
    ["closed without it", "open c1; close c1", "warning c1"],
    ["stood clear, then something else", "open c1; stand-clear; tag k1; close c1", "warning c1"],
    ["stood clear right before", "open c1; stand-clear; close c1", ""],
    [
      "one pole after the other of one place",
      "open c1; open c9; stand-clear; close c9 A; close c1",
      "",
      "c9 cutout p2-p9 A fuse=K15",
    ],
    [
      "the other pole down the road",
      "open c1; open c9; stand-clear; close c9 A; close c1",
      "warning c1",
      "sp9 span p1-p90 A\nc9 cutout p90-p9 A fuse=K15",
    ],
    [
      "something else between",
      "open c1; open c9; stand-clear; close c9 A; tag k1; close c1",
      "warning c1",
      "c9 cutout p2-p9 A fuse=K15",
    ],
    ["a solid blade throws nothing", "open c1; close c1", "", "c1 cutout p2-p3 A fuse=solid"],
    ["dead on both sides", "open c1; lift k1; close c1", ""],
    ["a disconnect", "open c1; close c1", "", "c1 disconnect p2-p3 A"],
  ],
);
