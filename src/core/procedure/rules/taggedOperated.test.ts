import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule("tagged-operated", "1910.269(m)(3)(v): tags forbid operating the device", TAP, [
  ["closed with its tag on", "open c1; tag c1; close c1", "danger c1"],
  ["opened with a tag on", "open c1", "danger c1", "c1 cutout p2-p3 A tagged=true"],
  ["untagged first", "open c1; tag c1; untag c1; close c1", ""],
  ["another thing", "open c1; tag c1; open c2", ""],
  ["taking the barrel out of an open cutout only makes it safer", "open c1; tag c1; remove-barrel c1", ""],
  [
    "hanging it back in, open, operates nothing either",
    "open c1; tag c1; remove-barrel c1; refuse c1; replace-barrel c1",
    "",
  ],
  [
    "nobody hangs it back in while people are on the line",
    "open c1; remove-barrel c1; tag c1; work w1; replace-barrel c1",
    "danger c1",
  ],
  [
    "nor under a tag that was found there",
    "replace-barrel c1",
    "danger c1",
    "c1 cutout p2-p3 A open=A removed=A tagged=true",
  ],
  [
    "the other poles, opened one by one and tagged at the first",
    "open c3 A; tag c3; open c3 BC",
    "",
    "c3 cutout p1-p9 ABC",
  ],
  ["a pole closed again under that tag", "open c3 A; tag c3; close c3 A", "danger c3", "c3 cutout p1-p9 ABC"],
  [
    "the other poles under a tag that was found there",
    "open c3 BC",
    "danger c3",
    "c3 cutout p1-p9 ABC open=A tagged=true",
  ],
  ["a tag hung on a generator", "tag gx; start gx", "danger gx", "gx generator h1 12 kva=6 volts=240"],
]);
