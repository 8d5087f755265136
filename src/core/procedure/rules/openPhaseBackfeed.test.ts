import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "open-phase-backfeed",
  "1910.269(l)(1)(iii): lines count as energized until deenergized; an opened phase of a grounded-wye/delta bank stands at full voltage",
  `
  s1   source      sub    ABC kvLL=12.47
  c1   cutout      sub-p1 ABC fuse=K25
  t1   transformer p1-p2  ABC connection=Yg-D kva=150 primaryKv=12.47 secondaryV=240
  ld1  load        p2     ABC connection=delta kw=20
  w1   work        p1     A
`,
  [
    ["grounded with only its own phase open", "open c1 A; ground p1 A", "danger p1/A"],
    ["worked on with only its own phase open", "open c1 A; work w1", "danger p1/A"],
    ["two of three are open", "open c1 AB; ground p1 A", "danger p1/A"],
    ["all three are open", "open c1 ABC; ground p1 A", ""],
    [
      "a bank that ties nothing",
      "open c1 A; ground p1 A",
      "",
      "t1 transformer p1-p2 ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=240\nld1 load p2 ABC connection=wye kw=20",
    ],
    [
      "a load between phases ties them too",
      "open c1 A; ground p1 A",
      "danger p1/A",
      "t1 transformer p1-p2 ABC connection=Yg-Yg kva=150 primaryKv=12.47 secondaryV=240",
    ],
    [
      "backfed by a generator is another rule",
      "open c1 A; ground p1 A",
      "",
      "t1 transformer p1-p2 A connection=single kva=50 primaryKv=7.2 secondaryV=240\nld1 load p2 12 connection=delta kw=2\ng1 generator p2 12 kva=20 volts=240 on=true\nw1 work p1 A",
    ],
  ],
);
