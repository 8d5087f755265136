import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "not-repaired",
  "common practice, no source: what is to be made sound is not energized before that is done",
  `${TAP}
  w1 work p2 A does=k1`,
  [
    ["the clamp is put back on before it was worked on", "open c1; lift k1; attach k1", "danger k1"],
    [
      "the line that it was lifted from",
      "open br1; lift k1; close br1",
      "",
      "main span sub0-p1 ABC lengthM=2000\nbr1 recloser sub-sub0 ABC",
    ],
    [
      "its lead, from the far side",
      "open c1; lift k1; close c9",
      "danger k1",
      "c9 cutout sub-p2 A open=A fuse=K25",
    ],
    ["after the work", "open c1; lift k1; work w1; attach k1", ""],
    ["something else is switched", "open c2; close c2", ""],
    ["nothing comes to life", "open c1; lift k1; open c2; close c2", ""],
    [
      "a thing that is still to be put in",
      "open c1; close c1",
      "",
      "sp9 span p3-p9 A planned=true\nw1 work p2 A does=sp9",
    ],
    ["a bank that is to be changed", "open c2; close c2", "danger t1", "w1 work p5 A does=t1"],
  ],
);
