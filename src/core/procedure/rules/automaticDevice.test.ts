import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "automatic-device",
  "1910.269(m)(3)(iii): automatic or remote switches that could reclose an opened means are tagged and the feature disabled",
  `${TAP}
  k1 recloser p1-p2 A
  w1 work p3 A
`,
  [
    ["a recloser with its reclosing on", "open k1; tag k1; check-detector; test p3 A", "danger k1"],
    ["a remote switch", "open k1; tag k1; ground p3 A", "danger k1", "k1 disconnect p1-p2 A remote=true"],
    ["blocked", "open k1; block k1; tag k1; check-detector; test p3 A", ""],
    [
      "one that neither recloses nor listens",
      "open k1; tag k1; test p3 A",
      "",
      "k1 recloser p1-p2 A reclosing=false",
    ],
    ["nothing rests on it yet", "open k1", ""],
  ],
);

checkRule(
  "automatic-device",
  "common practice, no source: a circuit that crosses the work has its reclosing held by whoever operates it",
  `${TAP}
  n1 nearby span=sp1 relation=crossing kvLL=12.47
  w1 work p3 A
`,
  [
    ["nobody asked", "open c1; work w1", "note n1"],
    ["the operator was asked", "ask n1; open c1; work w1", ""],
    ["of the job as a whole", "ask; open c1; work w1", ""],
    ["of something else", "ask c1; open c1; work w1", "note n1"],
    ["nobody is on the line yet", "open c1; ground p3 A", ""],
    ["live work too", "work w1 method=sticks", "note n1"],
    ["a span further on", "open c1; work w1", "", "w1 work h1 12"],
    ["that the work puts up", "open c1; work w1", "note n1", "w1 work h1 12 does=sp1"],
    [
      "on the same poles",
      "open c1; work w1",
      "note n1",
      "n1 nearby span=sp1 relation=underbuild kvLL=12.47 spacingM=3",
    ],
    [
      "beside it, out of a wire's reach",
      "open c1; work w1",
      "",
      "n1 nearby span=sp1 relation=parallel kvLL=12.47 spacingM=9",
    ],
    ["shut off", "open c1; work w1", "", "n1 nearby span=sp1 relation=crossing kvLL=12.47 on=false"],
    ["a service wire", "open c1; work w1", "", "n1 nearby span=sp1 relation=crossing kvLL=0.24"],
  ],
);
