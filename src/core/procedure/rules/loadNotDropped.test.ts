import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "load-not-dropped",
  "common practice: opening one way in leaves what another feeds",
  `${TAP}
  d1 disconnect p4-p20 A
  s2 source p20 A kvLL=12.47
  w1 work p3 A
`,
  [
    ["the far end still feeds it", "open c1 with load-break-tool", "note c1"],
    ["the other way in was opened before", "open d1; open c1", ""],
    ["the side that the job is on", "open c1", "", "w1 work p2 A"],
    [
      "a generator runs behind the meter",
      "open c1",
      "note c1",
      "d1 none\ns2 none\ng1 generator h1 12 kva=20 volts=240 on=true",
    ],
  ],
);
