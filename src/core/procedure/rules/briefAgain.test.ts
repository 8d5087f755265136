import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "brief-again",
  "1910.269(c)(3): another briefing is held when a significant change could affect safety",
  TAP,
  [
    [
      "a test showed what nobody expected, and work goes on",
      "brief; check-detector; test p2 A; inspect p1; open c1",
      "warning c1",
    ],
    ["told once", "brief; check-detector; test p2 A; open c1; tag c1", ""],
    ["briefed again", "brief; check-detector; test p2 A; inspect p1; brief; open c1", ""],
    [
      "a test that shows nothing changes nothing",
      "brief; open c1; lift k1; check-detector; test p2 A; tag c1",
      "",
    ],
    ["never briefed at all is another rule", "check-detector; test p2 A; open c1", ""],
  ],
);
