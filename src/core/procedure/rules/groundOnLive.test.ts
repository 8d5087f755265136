import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "ground-on-live",
  "1910.269(n)(5): found to have no nominal voltage before any ground goes on",
  TAP,
  [
    ["onto the energized line", "ground p1 A", "danger g1"],
    [
      "onto what a generator feeds backwards",
      "open c1; ground p3 A",
      "danger g1",
      "gx generator h1 12 kva=20 volts=240 on=true",
    ],
    ["onto what is dead", "open c1; lift k1; ground p2 A", ""],
    [
      "off while a generator feeds it",
      "open c1; ground p3 A; start gx; unground g1",
      "danger g1",
      "gx generator h1 12 kva=20 volts=240",
    ],
    ["off what is dead", "open c1; lift k1; ground p2 A; unground g1", ""],
    ["onto what another ground holds", "open c1; lift k1; ground p2 A; ground p2 A as g2", ""],
  ],
);
