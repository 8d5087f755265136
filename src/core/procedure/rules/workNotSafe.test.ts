import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "work-not-safe",
  "1910.269(n)(2): to work a line as dead it is both deenergized under (m) and grounded under (n)",
  TAP,
  [
    ["live", "work w1", "danger w1"],
    ["one mistake away", "open c1; lift k1; work w1", "danger w1"],
    [
      "isolated, not tested and not grounded",
      "open c1; tag c1; block c1; lift k1; tag k1; block k1; work w1",
      "danger w1",
      "ld1 load h1 12 connection=delta kw=8",
    ],
    [
      "grounded without a test",
      "open c1; tag c1; block c1; lift k1; tag k1; block k1; ground p2 A cable 2/0; work w1",
      "danger w1",
    ],
    [
      "tested and grounded",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1",
      "",
    ],
    ["hot-stick work goes by its own rules", "work w1 with clamp-stick", ""],
  ],
);
