import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "close-rating",
  "1910.269(l)(12)(ii): a device used to close a circuit under load is designed to carry the current",
  `${TAP}
  ld1 load h1 12 connection=delta kw=900
  t1 transformer p5-p6 A connection=single kva=2000 primaryKv=7.2 secondaryV=240
`,
  [
    ["over 100 A through a clamp", "lift k1; attach k1", "warning k1"],
    [
      "a clamp that may carry 200 A by the company's rule",
      "lift k1; attach k1",
      "",
      "set tapClampMaxAmps=200",
    ],
    ["over the cutout's own rating", "open c1; close c1", "warning c1"],
    ["a cutout for 200 A", "open c1; close c1", "", "c1 cutout p2-p3 A continuousAmps=200"],
    ["a ground beyond it is a fault, not a load", "open c1; ground p3 A; close c1", ""],
  ],
);
