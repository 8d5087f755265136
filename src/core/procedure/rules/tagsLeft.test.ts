import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "tags-left",
  "1910.269(m)(3)(xiii): all protective tags are off that point before it is energized",
  TAP,
  [
    [
      "the tag of the cutout is still on",
      "open c1; tag c1; lift k1; tag k1; untag k1; attach k1",
      "warning c1",
    ],
    ["all tags are off", "open c1; tag c1; lift k1; tag k1; untag k1; untag c1; attach k1", ""],
    [
      "a tag that was there before the crew",
      "lift k1; attach k1",
      "",
      "c1 cutout p2-p3 A open=A tagged=true",
    ],
    ["a tag beyond what is energized", "open c1; lift k1; open c2; tag c2; attach k1", ""],
    ["it reaches that far", "open c1; open c2; tag c2; close c1", "warning c2", "w1 work p3 A"],
  ],
);
