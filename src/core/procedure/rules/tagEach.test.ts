import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "tag-each",
  "1910.269(m)(3)(ii): every switch or other path from a known source is opened and tagged",
  `${TAP}
  d1 disconnect p4-p20 A open=A normallyOpen=true
  s2 source p20 A kvLL=12.47
  w1 work p3 A
`,
  [
    ["neither way in is tagged", "open c1; check-detector; test p3 A", "danger c1, danger d1"],
    ["the far tie is forgotten", "open c1; tag c1; ground p3 A", "danger d1"],
    ["the near one is forgotten", "tag d1; open c1; work w1", "danger c1"],
    ["both", "tag d1; open c1; tag c1; check-detector; test p3 A", ""],
    // Beyond the open tie nothing leads to the work: to find out how things stand there is no reliance on it.
    [
      "a test beyond the tie, of what nothing joins to the work",
      "open c1; check-detector; test p20 A",
      "",
      "s2 source p20 A kvLL=12.47 on=false",
    ],
    // The switch that stands open at the work place itself keeps it isolated, whatever is found out beyond it.
    [
      "a test beyond an open switch that stands at the work place itself",
      "open c1; tag c1; open d3; tag d3; check-detector; test p9 A",
      "",
      "d3 disconnect p4-p9 A loadBreakAmps=100\nm9 span p9-p10 A\nd1 disconnect p10-p20 A open=A normallyOpen=true\nw1 work p4 A",
    ],
    [
      "while that switch has no tag itself",
      "open c1; tag c1; open d3; check-detector; test p9 A",
      "danger d3",
      "d3 disconnect p4-p9 A loadBreakAmps=100\nm9 span p9-p10 A\nd1 disconnect p10-p20 A open=A normallyOpen=true\nw1 work p4 A",
    ],
    [
      "the same before that switch is open",
      "open c1; tag c1; check-detector; test p9 A",
      "danger d1",
      "d3 disconnect p4-p9 A loadBreakAmps=100\nm9 span p9-p10 A\nd1 disconnect p10-p20 A open=A normallyOpen=true\nw1 work p4 A",
    ],
    [
      "the house behind the section, which a winding joins to it",
      "open c1; test p6 12",
      "danger c1, danger d1",
    ],
    ["a test for volts", "open c1; test p3 A expect live", ""],
    ["a ground beside it", "open c1; ground p6 12", "danger c1, danger d1"],
    ["while it is live nothing rests on an opening yet", "check-detector; test p3 A", ""],
    [
      "a single crew with all openings in its sight",
      "open c1; work w1",
      "",
      "set singleCrew=true\nd1 none\ns2 none",
    ],
    [
      "a single crew that also works where it cannot see the opening",
      "open c1; work w1",
      "danger c1",
      "set singleCrew=true\nd1 none\ns2 none\nw2 work p4 A",
    ],
    [
      "a single crew with the tie out of its sight",
      "open c1; work w1",
      "danger c1, danger d1",
      "set singleCrew=true",
    ],
  ],
);

const RUNNING =
  "gx generator hg 12 kva=8 volts=240 on=true\ntx transfer h1-h2-hg 12 position=generator\nhg point kind=service\nh2 point kind=service";

checkRule(
  "tag-each",
  "1910.269(m)(3)(ii): a customer's machine is a known source, and a ground set is no open point",
  `${TAP}
  gx generator h1 12 kva=8 volts=240
  w1 work p3 A
`,
  [
    ["nothing parts it from the work", "open c1; tag c1; check-detector; test p3 A", "danger gx"],
    [
      "a set on the low side holds it, and parts nothing",
      "open c1; tag c1; check-detector; test p6 12; ground p6 12 cable 2/0; work w1",
      "danger gx",
    ],
    ["its transformer's cutout is open and tagged", "open c1; tag c1; open c2; tag c2; test p3 A", ""],
    ["open, without a tag", "open c1; tag c1; open c2; test p3 A", "danger c2"],
    ["a tag on the machine where a cutout opens between", "open c1; tag c1; tag gx; test p3 A", "danger gx"],
    [
      "where nothing between opens it is tagged itself",
      "open c1; tag c1; tag gx; test p3 A",
      "",
      "c2 span p4-p5 A lengthM=1\nm1 span p6-h1 12 lengthM=20",
    ],
    ["its meter is pulled and tagged", "open c1; tag c1; pull m1; tag m1; test p3 A", ""],
    [
      "its transfer switch stands on the utility",
      "open c1; tag c1; test p3 A",
      "",
      "gx generator hg 12 kva=8 volts=240\ntx transfer h1-h2-hg 12 position=utility\nhg point kind=service\nh2 point kind=service",
    ],
    [
      "it runs behind its transfer switch, which nobody tagged",
      "open c1; tag c1; test p3 A",
      "danger tx",
      RUNNING,
    ],
    ["it runs, and its transfer switch has a tag", "open c1; tag c1; tag tx; test p3 A", "", RUNNING],
    [
      "it runs, and its meter is pulled and tagged",
      "open c1; tag c1; pull m1; tag m1; test p3 A",
      "",
      RUNNING,
    ],
    ["one that nobody drew is assumed, and no known source", "open c1; tag c1; test p3 A", "", "gx none"],
  ],
);

checkRule(
  "tag-each",
  "1910.269(m)(3)(ii): an open point is one between a source and the work; a fault elsewhere that lifts the neutral is exposure, and no way in",
  `
  s1 source sub AB kvLL=12.47
  main span sub-p1 AB lengthM=2000
  ra regulator p1-p2 A taps={"A":4}
  ba disconnect p1-p2 A open=A normallyOpen=true
  db disconnect p1-p3 B
  w1 work p3 B
`,
  [
    ["the other phase's bypass has no tag", "open db; tag db; check-detector; test p3 B", ""],
    ["the work's own disconnect has none", "open db; check-detector; test p3 B", "danger db"],
  ],
);
