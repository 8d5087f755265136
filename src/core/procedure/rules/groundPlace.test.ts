import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "ground-place",
  "1910.269(n)(3): temporary grounds are placed so that nobody meets a hazardous difference in potential",
  `${TAP}
  w1 work p3 A
`,
  [
    [
      "grounded three spans away, the worker would feel it",
      "open c1; ground p8 A cable 2/0; work w1",
      "danger w1",
      "sp2 span p4-p7 A lengthM=3000\nsp3 span p7-p8 A lengthM=3000",
    ],
    ["grounded at the work", "open c1; ground p3 A cable 2/0; work w1", ""],
    ["no ground at all is another rule", "open c1; work w1", ""],
    [
      "hot-stick work is another",
      "open c1; ground p8 A; work w1 with clamp-stick",
      "",
      "sp2 span p4-p7 A lengthM=3000\nsp3 span p7-p8 A lengthM=3000",
    ],
  ],
);
