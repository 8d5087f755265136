import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "test-before-ground",
  "1910.269(n)(5): before any ground goes on the line is tested and found without nominal voltage, unless a ground is already there",
  TAP,
  [
    ["never tested", "open c1; lift k1; ground p2 A", "danger g1"],
    [
      "tested, then something was switched",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; open c2; ground p2 A",
      "danger g1",
    ],
    [
      "tested, then a ground came off",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; ground p2 A; unground g1; ground p2 A",
      "danger g1",
    ],
    [
      "tested at another point",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; ground p3 A",
      "danger g1",
    ],
    [
      "one of three phases is not tested",
      "open d1; check-detector; test p1 AB; ground p1 ABC",
      "danger g1",
      "d1 disconnect sub-p9 ABC gang=true\nmain span p9-p1 ABC lengthM=2000",
    ],
    [
      "tested there since",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; ground p2 A",
      "",
    ],
    [
      "tags and blocks are no switching",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; tag c1; block k1; ground p2 A",
      "",
    ],
    [
      "a ground holds it already",
      "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; ground p2 A; ground p2 A as g2",
      "",
    ],
    [
      "a ground at the other end of the span proves nothing about this end",
      "open c1 with load-break-tool; lift k1; check-detector; test p3 A; check-detector; ground p3 A; ground p4 A as g2",
      "danger g2",
    ],
    [
      "nor one at the other end of a buried cable",
      "open c1 with load-break-tool; lift k1; check-detector; test p3 A; check-detector; ground p3 A; ground p4 A as g2",
      "danger g2",
      "sp1 span p3-p4 A construction=cable lengthM=60",
    ],
    ["tested and found live", "check-detector; test p2 A; ground p2 A", "danger g1"],
  ],
);
