import { checkRule, TAP } from "../../../../tests/support/jobNotation";

const RECLOSER = "main span sub-p0 ABC lengthM=2000\n r1 recloser p0-p1 ABC";

checkRule(
  "hands-on-live",
  "1910.269(l)(1)(iii): lines are energized until they were made dead; (l)(2)(i): a second person over 600 V; (l)(12) and 1910.137: gloves of a class for the volts",
  `${TAP}
  l1 lead p6-s6 12
  sv span s6-h2 12 construction=secondary
  m2 meter h2-h3 12 open=12
  h2 point kind=service
  h3 point kind=service
  k2 clamp p4-p7 A open=A
`,
  [
    ["live leads cut with bare hands", "cut l1 12 with lead-cutters", "danger l1"],
    ["in gloves for them", "cut l1 12 method gloves gloveClass 0", ""],
    ["in gloves whose class nobody said", "cut l1 12 method gloves", "danger l1"],
    ["dead leads that nobody tested", "open c2 A; cut l1 12 with lead-cutters", "warning l1"],
    ["dead leads", "open c2 A; check-detector; test p6 12; cut l1 12 with lead-cutters", ""],
    ["dead leads that nobody tested, in gloves", "open c2 A; cut l1 12 method gloves gloveClass 0", ""],
    [
      "a jumper of the line, dead and not grounded",
      "open c1 A; check-detector; test p4 A; cut l9 A with lead-cutters",
      "danger l9",
      "l9 lead p4-p9 A",
    ],
    ["the same with a stick", "open c1 A; cut l9 A with hot-stick", "", "l9 lead p4-p9 A"],
    [
      "the same, grounded",
      "open c1 A; check-detector; test p4 A; ground p4 A cable 2/0 as g1; cut l9 A with lead-cutters",
      "",
      "l9 lead p4-p9 A",
    ],
    ["joined again with the line live", "open c2 A; cut l1 12; close c2 A; join l1 12", "danger l1"],
    ["a meter put onto live jaws", "replace m2", "danger m2"],
    ["the same in gloves", "replace m2 method gloves gloveClass 00", ""],
    ["a meter pulled off live jaws", "pull m1", "danger m1"],
    ["the same in gloves", "pull m1 method gloves gloveClass 00", ""],
    ["a meter pulled with the line dead", "open c1 A; pull m1", ""],
    ["a meter put in with the line dead", "open c1 A; replace m2", ""],
    ["a clamp goes by its stick", "attach k2 A with clamp-stick", ""],
    ["a clamp put on by hand", "attach k2 A method bare", "danger k2"],
    ["a clamp taken off by hand", "attach k2 A with clamp-stick; lift k2 A method bare", "danger k2"],
    ["class 1 for 7 200 V to ground", "attach k2 A method gloves-and-cover gloveClass 1", ""],
    ["class 0 for 7 200 V to ground", "attach k2 A method gloves-and-cover gloveClass 0", "danger k2"],
    ["alone on the pole", "attach k2 A method sticks", "warning k2", "job people=1"],
    ["reclosing not held", "attach k2 A method sticks", "warning r1", RECLOSER],
    ["reclosing blocked", "block r1; attach k2 A method sticks", "", RECLOSER],
    [
      "work in gloves, everything in reach covered",
      "cover p1; work w1 method gloves-and-cover gloveClass 1",
      "",
    ],
    [
      "the clamp beside the hands covered, and what it does not carry left bare",
      "cover k1; work w1 method gloves-and-cover gloveClass 1",
      "warning w1",
    ],
    [
      "cover that the step names and nobody put on",
      "work w1 method gloves-and-cover gloveClass 1",
      "warning w1",
    ],
    [
      "work in gloves, with other phases bare on the pole",
      "work w1 method gloves gloveClass 1",
      "warning w1",
    ],
    [
      "work on all three phases: the other two are beside the one in hand",
      "work w3 method gloves-and-cover gloveClass 2",
      "warning w3",
      "w3 work p1 ABC",
    ],
    [
      "work on all three, each covered",
      "cover p1; cover p2; cover p3; work w3 method gloves-and-cover gloveClass 2",
      "",
      "w3 work p1 ABC",
    ],
    ["work in gloves that do not hold its volts", "work w1 method gloves gloveClass 00", "danger w1"],
    ["work on it with a stick", "work w1 method sticks", ""],
    ["the stick named as a tool", "work w1 with hot-stick", ""],
    ["a stick in hand alone on the pole", "work w1 with hot-stick", "warning w1", "job people=1"],
    ["a stick in hand, reclosing not held", "work w1 with hot-stick", "warning r1", RECLOSER],
    ["a stick in hand, reclosing blocked", "block r1; work w1 with hot-stick", "", RECLOSER],
    [
      "a lead of the line cut with a stick, reclosing not held",
      "cut l9 A with hot-stick",
      "warning r1",
      `${RECLOSER}\n l9 lead p4-p9 A`,
    ],
    ["the same on a service, with nothing of the line in reach", "cut l1 12 with hot-stick", "", RECLOSER],
    ["work with a stick, said to be bare hands", "work w1 with hot-stick method bare", "danger w1"],
  ],
);

checkRule(
  "hands-on-live",
  "common practice: an open neutral counts as a hot conductor until it was tested",
  `${TAP}
  sv span p6-h2 12 construction=secondary parted=N
  h2 point kind=service
`,
  [
    ["spliced before a test", "join sv N method gloves gloveClass 0", "warning sv"],
    ["spliced after it", "check-detector; test h2 N; join sv N method gloves gloveClass 0", ""],
    ["with bare hands, its legs live", "check-detector; test h2 N; join sv N", "danger sv"],
    ["with bare hands, everything dead and tested", "open c1 A; check-detector; test h2; join sv N", ""],
    [
      "with bare hands, dead, the neutral alone tested",
      "open c1 A; check-detector; test h2 N; join sv N",
      "warning sv",
    ],
    [
      "as the work of a work place that is dead, its neutral not tested",
      "open c1 A; check-detector; test h2 12; work w2",
      "danger sv",
      "w2 work h2 12 does=sv",
    ],
    [
      "as the work of a work place, all of it tested",
      "open c1 A; check-detector; test h2; work w2",
      "",
      "w2 work h2 12 does=sv",
    ],
    ["with bare hands, dead and not tested", "open c1 A; join sv N", "danger sv"],
    [
      "with bare hands, its legs dead and tested, and the neutral hot through what hangs between it and a live line",
      "open c1 A; check-detector; test h2 12; test h2 N expect=live; join sv N",
      "danger sv",
      "sa span p1-h2 A neutral=false\nld9 load h2 A connection=wye kw=30 customers=1",
    ],
  ],
);
