import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "pick-up-order",
  "common practice: the clamp goes on with the cutout open, and the cutout picks up the load",
  TAP,
  [
    ["the clamp makes the load", "lift k1; attach k1", "danger k1"],
    ["the cutout is open", "open c1; lift k1; attach k1", ""],
    ["then the cutout picks it up", "open c1; lift k1; attach k1; close c1", ""],
    ["no load, and the inrush of a bank", "pull m1; lift k1; attach k1", "danger k1"],
    ["onto a dead line", "lift k1; attach k1", "", "s1 source sub ABC kvLL=12.47 on=false"],
  ],
);
