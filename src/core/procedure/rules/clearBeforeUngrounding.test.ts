import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "clear-before-ungrounding",
  "1910.269(m)(3)(x): everyone is clear of the line before the grounds come off",
  TAP,
  [
    [
      "people are still at work",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; unground g1",
      "danger g1",
    ],
    [
      "everyone is clear",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; all-clear; confirm; unground g1",
      "",
    ],
    [
      "work began again after the all-clear",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; all-clear; work w1; unground g1",
      "danger g1",
    ],
    [
      "nobody has begun",
      "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; unground g1",
      "",
    ],
  ],
);
