import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "brief-first",
  "1910.269(c)(1)(ii): the employee in charge briefs the crew before each job starts",
  TAP,
  [
    ["something is opened before the tailboard", "open c1 with load-break-tool", "warning c1"],
    ["a tag hung is a thing done too", "tag c1", "warning c1"],
    ["loose hardware is secured with a stick", "secure p1", "warning p1"],
    ["a cover goes onto the line", "cover p1", "warning p1"],
    ["told once, not at every step after", "open c1; tag c1", ""],
    ["looking and asking need no briefing", "inspect p1", ""],
    ["the crew is briefed", "brief; open c1", ""],
  ],
);
