import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "visible-gap",
  "common practice (Snohomish County PUD): de-energized by an adequate air break in every connection that is a possible source",
  `${TAP}
  k1 recloser p1-p2 A reclosing=false
  w1 work p3 A
`,
  [
    [
      "a test while only a recloser is open",
      "open k1; tag k1; block k1; check-detector; test p3 A",
      "warning k1",
    ],
    ["grounding on it", "open k1; tag k1; block k1; ground p3 A", "warning k1"],
    ["work on it", "open k1; tag k1; block k1; work w1", "warning k1"],
    ["a cutout open beside it can be seen", "open k1; tag k1; open c1; tag c1; work w1", ""],
    ["a disconnect shows its gap", "open k1; tag k1; work w1", "", "k1 disconnect p1-p2 A"],
    ["nothing rests on it while it is only opened", "open k1", ""],
  ],
);
