import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "step-touch",
  "1910.269 Appendix C: step and touch potentials near a grounded structure",
  `${TAP}
  p1 point earthOhms=200
  k1 clamp p1-p2 A
`,
  [
    [
      "nobody is kept clear of the base",
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1",
      "warning w1",
    ],
    [
      "barricaded",
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; barricade p2; work w1",
      "note w1",
    ],
    ["not said before work", "open c1; ground p2 A", ""],
  ],
);
