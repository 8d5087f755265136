import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule("all-clear-first", "1910.269(m)(3)(xiii): everyone is clear before the line is energized", TAP, [
  [
    "no all-clear since the last ground came off",
    "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; all-clear; confirm; unground g1; untag k1; unblock k1; attach k1",
    "danger k1",
  ],
  [
    "given and not repeated back",
    "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; all-clear; confirm; unground g1; all-clear; unblock k1; attach k1",
    "danger k1",
  ],
  [
    "given and repeated back",
    "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1; all-clear; confirm; unground g1; all-clear; confirm; unblock k1; attach k1",
    "",
  ],
  ["nobody was ever on the line", "open c1; close c1", ""],
  [
    "closing what energizes nothing",
    "open c1 with load-break-tool; tag c1; lift k1; tag k1; block k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; close c1",
    "",
  ],
  [
    "customers beyond an open switch are picked up from elsewhere",
    "open c1; ground p3 A; work w1; close d1",
    "",
    "w1 work p3 A\nsp1 disconnect p3-p4 A open=A\nd1 disconnect p4-p20 A open=A\ns2 source p20 A kvLL=12.47",
  ],
]);
