import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "induced-exposure",
  "1910.269(q)(2)(iv) note: more than 6 mA through 500 Ω is an induced-voltage hazard",
  `
  s1  source  sub    ABC kvLL=12.47
  d1  disconnect sub-p1 ABC gang=true
  sp1 span    p1-p2  ABC lengthM=10000
  w1  work    p2     A
  n1  nearby  span=sp1 relation=parallel kvLL=115 spacingM=20 lengthM=10000 amps=1500
`,
  [
    ["grounded at one end, the other can be felt", "open d1; ground p1 ABC; work w1", "danger w1"],
    ["grounded at the work point", "open d1; ground p2 ABC; work w1", ""],
    ["nothing beside it", "open d1; ground p1 ABC; work w1", "", "n1 none"],
  ],
);
