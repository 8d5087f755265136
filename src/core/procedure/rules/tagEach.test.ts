import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "tag-each",
  "1910.269(m)(3)(ii): every switch or other path from a known source is opened and tagged",
  `${TAP}
  d1 disconnect p4-p20 A open=A normallyOpen=true
  s2 source p20 A kvLL=12.47
  w1 work p3 A
`,
  [
    ["neither way in is tagged", "open c1; check-detector; test p3 A", "danger c1, danger d1"],
    ["the far tie is forgotten", "open c1; tag c1; ground p3 A", "danger d1"],
    ["the near one is forgotten", "tag d1; open c1; work w1", "danger c1"],
    ["both", "tag d1; open c1; tag c1; check-detector; test p3 A", ""],
    ["while it is live nothing rests on an opening yet", "check-detector; test p3 A", ""],
    [
      "a single crew with all openings in its sight",
      "open c1; work w1",
      "",
      "set singleCrew=true\nd1 none\ns2 none",
    ],
    [
      "a single crew that also works where it cannot see the opening",
      "open c1; work w1",
      "danger c1",
      "set singleCrew=true\nd1 none\ns2 none\nw2 work p4 A",
    ],
    [
      "a single crew with the tie out of its sight",
      "open c1; work w1",
      "danger c1, danger d1",
      "set singleCrew=true",
    ],
  ],
);
