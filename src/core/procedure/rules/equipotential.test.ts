import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "equipotential",
  "1910.269(n)(3): no employee meets a hazardous difference in potential; bonded work pole",
  TAP,
  [
    ["no set at the work point", "open c1; lift k1; ground p3 A; work w1", "warning w1"],
    [
      "a set that is not bonded to the pole",
      "open c1; lift k1; work w1",
      "warning w1",
      "gx ground p2 A cable=2/0 poleBond=false",
    ],
    [
      "a set that is on the drawing and not on the pole yet",
      "open c1; lift k1; work w1",
      "warning w1",
      "gx ground p2 A cable=2/0 planned=true",
    ],
    ["the neutral alone, on its rod", "open c1; lift k1; work w1", "", "w1 work p2 N"],
    [
      "the neutral beside a set that is not bonded to the pole",
      "open c1; lift k1; work w1",
      "warning w1",
      "w1 work p2 N\n gx ground p2 A cable=2/0 poleBond=false",
    ],
    ["a set at the work point", "open c1; lift k1; ground p2 A; work w1", ""],
    ["not said before work", "open c1", ""],
  ],
);
