import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule("test-live", "common practice: a test that shows voltage means stop and look again", TAP, [
  ["and a tag is hung", "check-detector; test p2 A; check-detector; tag c1", "danger p2/A"],
  ["and a ground goes on", "check-detector; test p2 A; ground p2 A", "danger p2/A"],
  ["somebody looks again", "check-detector; test p2 A; inspect p1; tag c1", ""],
  ["the operator is asked", "check-detector; test p2 A; ask; tag c1", ""],
  ["the detector is checked and nothing else done", "check-detector; test p2 A; check-detector", ""],
  [
    "it showed nothing",
    "open c1 with load-break-tool; lift k1; check-detector; test p2 A; check-detector; tag c1",
    "",
  ],
  ["told once", "check-detector; test p2 A; tag c1; tag k1", ""],
]);
