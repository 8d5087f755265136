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

checkRule(
  "cause-first",
  "common practice, no source: a recloser that was found open may have tripped, and the line beyond it is walked before it is closed",
  `
  s1 source sub ABC kvLL=12.47
  m0 span sub-p0 ABC lengthM=500
  rc recloser p0-p1 ABC open=ABC
  m1 span p1-p2 ABC lengthM=900
  w1 work p2 A
`,
  [
    ["closed as it is found", "close rc", "warning rc"],
    ["walked first", "inspect p2; close rc", ""],
    ["worked on first", "work w1; close rc", ""],
    [
      "what it tripped on is drawn, and cut off",
      "open d1; close rc",
      "",
      "d1 disconnect p2-p3 ABC gang=true\nf1 fault p3 A to=neutral",
    ],
    ["opened by the crew itself", "open rc; close rc", "", "rc recloser p0-p1 ABC"],
    ["open in service", "close rc", "", "rc recloser p0-p1 ABC open=ABC normallyOpen=true"],
    ["somebody's tag says why", "untag rc; close rc", "", "rc recloser p0-p1 ABC open=ABC tagged=true"],
    ["a switch trips on nothing", "close rc", "", "rc disconnect p0-p1 ABC open=ABC gang=true"],
    ["a breaker too", "close rc", "warning rc", "rc breaker p0-p1 ABC open=ABC"],
    [
      "a tie that nobody marked as one, to what the crew itself put out",
      "open m2; close rc",
      "",
      "m2 disconnect p2-p3 ABC gang=true\nm3 span p3-sub2 ABC lengthM=500\ns2 source sub2 ABC kvLL=12.47",
    ],
    ["nothing is energized by it", "close rc", "", "s1 source sub ABC kvLL=12.47 on=false"],
  ],
);
