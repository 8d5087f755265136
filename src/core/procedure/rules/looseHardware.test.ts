import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "loose-hardware",
  "common practice: nothing on a pole is shaken while something on it hangs loose",
  `${TAP}
  a1 arrester p2 A loose=true
`,
  [
    ["the cutout on its pole is opened", "open c1", "danger a1"],
    ["the clamp on its pole is lifted", "lift k1", "danger a1"],
    ["another pole", "open c2", ""],
    ["secured first", "secure a1; open c1", ""],
    ["secured by its pole", "secure p1; open c1", ""],
    ["an arrester that is whole and fast", "open c1", "", "a1 arrester p2 A"],
    ["a failed one may come apart too", "open c1", "danger a1", "a1 arrester p2 A failed=A"],
    ["cut clear", "cut l1; lift k1", "", "l1 lead p2-p20 A\na1 arrester p20 A loose=true"],
    ["a tag shakes nothing", "tag c1", ""],
  ],
);
