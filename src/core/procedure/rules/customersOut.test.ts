import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "customers-out",
  "common practice: who is left without supply is known before the switch is opened",
  `${TAP}
  m2  meter p6-h2 12
  ld2 load  h2 12 kw=2 connection=delta customers=1 critical=true
  h2  point kind=service
`,
  [
    ["four customers, one of them critical", "open c1 with load-break-tool", "note c1"],
    ["one meter", "pull m1", "note m1"],
    ["nobody left to drop", "open c1; open c2", ""],
    ["a load without customers", "pull m2", "", "ld2 load h2 12 kw=2 connection=delta"],
    ["tagging drops nobody", "tag c1", ""],
  ],
);
