import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "detector-check",
  "common practice: a detector that shows nothing may be broken; it is proven right before a test and right after",
  TAP,
  [
    ["not proven before", "test p2 A", "danger p2"],
    ["proven, but not right before", "check-detector; tag c1; test p2 A", "danger p2"],
    ["proven right before", "check-detector; test p2 A", ""],
    ["several tests in a row", "check-detector; test p2 A; test p3 A; test p4 A", ""],
    ["not proven again after", "check-detector; test p2 A; ground p2 A", "warning p2"],
    ["proven again", "check-detector; test p2 A; check-detector; ground p2 A", ""],
    ["a note lies between nothing", "check-detector; note; test p2 A; note; check-detector", ""],
  ],
);
