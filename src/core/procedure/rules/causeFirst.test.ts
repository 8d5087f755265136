import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "cause-first",
  "common practice, no source: what blew a link is looked for before it is closed again",
  `${TAP}
  c2 cutout p4-p5 A fuse=K10 blown=A`,
  [
    ["renewed and closed", "refuse c2; close c2", "warning c2"],
    ["looked for first", "inspect p5; refuse c2; close c2", ""],
    ["mended first", "work w1; refuse c2; close c2", ""],
    ["nothing is energized by it", "open c1; refuse c2; close c2", ""],
    ["one that had not blown", "open c1; close c1", ""],
  ],
);
