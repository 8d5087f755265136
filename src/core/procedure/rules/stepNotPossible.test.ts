import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "step-not-possible",
  "common practice: a step that the poles do not allow shows that the plan and they differ",
  TAP,
  [
    ["a transformer does not open", "open t1", "warning t1"],
    ["open already", "open c1; open c1", "note c1"],
    ["closed already", "close c1", "note c1"],
    ["a blown link joins nothing", "close c1", "warning c1", "c1 cutout p2-p3 A fuse=K25 blown=A"],
    [
      "with a new link the barrel still hangs open",
      "refuse c1; close c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 blown=A",
    ],
    ["the barrel is out", "remove-barrel c1; close c1", "warning c1"],
    ["a barrel put back hangs open", "remove-barrel c1; replace-barrel c1; close c1", ""],
    ["blocked", "open c1; block c1; close c1", "warning c1"],
    ["unblocked first", "open c1; block c1; unblock c1; close c1", ""],
    ["a cutout is nothing to lift", "lift c1", "warning c1"],
    ["a tag is on already", "tag c1; tag c1", "note c1"],
    ["a set of that name is on already", "ground p3 A as g1; ground p4 A as gz", ""],
    ["seized", "open c1", "warning c1", "c1 cutout p2-p3 A fuse=K25 condition=seized"],
    ["a seized clamp is not lifted", "lift k1", "warning k1", "k1 clamp p1-p2 A condition=seized"],
    [
      "what is seized can be tagged all the same",
      "tag c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 condition=seized",
    ],
    [
      "free again once the work has changed it",
      "work w1; open c1",
      "",
      "c1 cutout p2-p3 A fuse=K25 condition=seized\nw1 work p2 A does=c1",
    ],
    ["all as it should be", "open c1", ""],
  ],
);
