import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "capacitor-discharge",
  "1910.269(w)(1): disconnect capacitors, wait at least 5 minutes, then short-circuit; short any line connected to capacitors before treating it as dead",
  `
  s1   source     sub     ABC  kvLL=12.47
  d1   disconnect sub-p1  ABC  gang=true
  sp1  span       p1-p2   ABC  lengthM=300
  cb   capacitor  p2      ABC  kvar=300 kvLL=12.47
  w1   work       p2      A
`,
  [
    ["grounded right after it was left without supply", "open d1; ground p2 ABC", "danger cb"],
    ["grounded at the other end of what it hangs on", "open d1; wait 60; ground p1 ABC", "danger cb"],
    ["after 299 s", "open d1; wait 299; ground p2 ABC", "danger cb"],
    ["after 300 s", "open d1; wait 300; ground p2 ABC", ""],
    ["waited in parts", "open d1; wait 150; note; wait 150; ground p2 ABC", ""],
    [
      "the clock begins anew when it is supplied again",
      "open d1; wait 300; close d1; open d1; ground p2 ABC",
      "danger cb",
    ],
    ["work before it was shorted", "open d1; wait 300; work w1", "danger cb"],
    ["work after", "open d1; wait 300; ground p2 ABC; work w1", ""],
    ["one phase is not shorted", "open d1; wait 300; ground p2 AB; work w1", "danger cb"],
    ["found discharged", "ground p2 ABC", "", "d1 disconnect sub-p1 ABC gang=true open=ABC"],
    [
      "found charged",
      "ground p2 ABC",
      "danger cb",
      "d1 disconnect sub-p1 ABC gang=true open=ABC\ncb capacitor p2 ABC kvar=300 kvLL=12.47 charged=true",
    ],
    [
      "its own switch is open",
      "open d1; ground p2 ABC",
      "",
      "cb capacitor p2 ABC kvar=300 kvLL=12.47 open=ABC",
    ],
    [
      "a phase that was just opened, while the others are live",
      "open d1 A; ground p2 A",
      "danger cb",
      "d1 disconnect sub-p1 ABC",
    ],
    ["that phase after 300 s", "open d1 A; wait 300; ground p2 A", "", "d1 disconnect sub-p1 ABC"],
    [
      "the phases that were opened last count",
      "open d1 A; wait 300; open d1 BC; ground p2 ABC",
      "danger cb",
      "d1 disconnect sub-p1 ABC",
    ],
    ["the line is live: another rule", "ground p2 ABC", ""],
  ],
);

checkRule(
  "capacitor-discharge",
  "1910.269(w)(1): a bank that is changed is in hand itself, and its own open switch parts it from every ground set",
  `
  s1   source     sub     ABC  kvLL=12.47
  d1   disconnect sub-p1  ABC  gang=true
  sp1  span       p1-p2   ABC  lengthM=300
  cb   capacitor  p2      ABC  kvar=300 kvLL=12.47
  w1   work       p2      ABC  does=cb
`,
  [
    ["behind its own switch", "open cb; open d1; wait 300; ground p2 ABC; work w1", "danger cb"],
    ["at once", "open d1; open cb; ground p2 ABC; work w1", "danger cb"],
    ["shorted by the set", "open d1; wait 300; ground p2 ABC; work w1", ""],
    ["shorted, then opened", "open d1; wait 300; ground p2 ABC; open cb; work w1", ""],
    [
      "its switch closed again onto the dead line",
      "open cb; open d1; wait 300; close cb; ground p2 ABC; work w1",
      "",
    ],
    [
      "one that the work leaves alone",
      "open cb; open d1; wait 300; ground p2 ABC; work w1",
      "",
      "w1 work p2 ABC",
    ],
    [
      "found open and discharged",
      "open d1; ground p2 ABC; work w1",
      "",
      "cb capacitor p2 ABC kvar=300 kvLL=12.47 open=ABC",
    ],
    [
      "found open and charged",
      "open d1; wait 300; ground p2 ABC; work w1",
      "danger cb",
      "cb capacitor p2 ABC kvar=300 kvLL=12.47 open=ABC charged=true",
    ],
  ],
);

checkRule(
  "capacitor-discharge",
  "common practice, no source: a bank behind its own cutouts is not closed again before it is discharged",
  `
  s1 source p1 ABC kvLL=12.47
  c5 cutout p1-p5 ABC
  cap1 capacitor p5 ABC kvar=600 kvLL=12.47 connection=wye
  sw1 disconnect p1-p6 ABC gang=true
  cap2 capacitor p6 ABC kvar=300 kvLL=12.47 connection=wye
  ld1 load p6 ABC kw=200
`,
  [
    ["closed again at once", "open c5; close c5", "danger c5"],
    ["after five minutes", "open c5; wait 300; close c5", ""],
    ["a load beside it drains it", "open sw1; close sw1", ""],
  ],
);

checkRule(
  "capacitor-discharge",
  "common practice, no source: nor is one behind its own switch, which nothing on the line drains",
  `
  s1 source p1 ABC kvLL=12.47
  cap capacitor p1 ABC kvar=300 kvLL=12.47
  ld1 load p1 ABC kw=200
`,
  [
    ["closed again at once", "open cap; close cap", "danger cap"],
    ["after 299 s", "open cap; wait 299; close cap", "danger cap"],
    ["after five minutes", "open cap; wait 300; close cap", ""],
    ["one of its phases", "open cap B; close cap B", "danger cap"],
    ["found off and discharged", "close cap", "", "cap capacitor p1 ABC kvar=300 kvLL=12.47 open=ABC"],
    [
      "found off and charged",
      "close cap",
      "danger cap",
      "cap capacitor p1 ABC kvar=300 kvLL=12.47 open=ABC charged=true",
    ],
    [
      "onto a line that is dead",
      "open cap; close cap",
      "",
      "sw disconnect p1-p2 ABC open=ABC\ncap capacitor p2 ABC kvar=300 kvLL=12.47\nld1 load p2 ABC kw=200",
    ],
  ],
);
