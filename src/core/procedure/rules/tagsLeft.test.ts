import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "tags-left",
  "1910.269(m)(3)(xiii): all protective tags are off that point before it is energized",
  TAP,
  [
    [
      "the tag hangs on a cutout that stays open",
      "open c1; tag c1; lift k1; tag k1; untag k1; attach k1",
      "",
    ],
    ["all tags are off", "open c1; tag c1; lift k1; tag k1; untag k1; untag c1; attach k1", ""],
    [
      "a tag that was there before the crew",
      "lift k1; attach k1",
      "",
      "c1 cutout p2-p3 A open=A tagged=true",
    ],
    ["a tag beyond what is energized", "open c1; lift k1; open c2; tag c2; attach k1", ""],
    ["a tag on what was closed under it", "open c1; tag c2; close c1", "warning c2", "w1 work p3 A"],
  ],
);
