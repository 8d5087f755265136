import { checkRule, TAP } from "../../../../tests/support/jobNotation";

const PARTED = "sv span p6-h2 12 construction=secondary parted=N\n m2 meter h2-h3 12 open=12";

checkRule(
  "open-neutral",
  "common practice, no source: an open service neutral burns what the customers have",
  `${TAP}
  sv span p6-h2 12 construction=secondary
  m2 meter h2-h3 12
  ld2 load h3 12 connection=wye kw=4 customers=1
  ldx load h3 1 connection=wye kw=1
  h2 point kind=service
  h3 point kind=service
`,
  [
    ["cut with the house on it", "cut sv N method gloves gloveClass 0", "danger sv"],
    ["cut on a dead line", "open c1 A; cut sv N", ""],
    [
      "cut last, its legs cut before it",
      "cut sv 12 method gloves gloveClass 0; cut sv N method gloves gloveClass 0",
      "",
    ],
    ["the legs cut, not the neutral", "open c1 A; cut sv 12", ""],
    ["a meter put back on an open neutral", "replace m2", "danger ld2, danger ldx", PARTED],
    ["put back on a whole one", "replace m2", "", "m2 meter h2-h3 12 open=12"],
    ["the line energized onto an open neutral", "open c1 A; cut sv N; close c1 A", "danger ld2, danger ldx"],
    ["a load between the legs has no neutral to lose", "open c1 A; close c1 A", ""],
  ],
);

const BETWEEN = `
  s1   source     sub    ABC kvLL=12.47
  main span       sub-p1 ABC lengthM=500
  sw1  disconnect p1-p2  ABC gang=true loadBreakAmps=600 open=ABC
  sp   span       p2-p3  ABC lengthM=200
  sw2  disconnect p3-p4  ABC gang=true loadBreakAmps=600 open=ABC
  sp2  span       p4-p5  ABC lengthM=500
  ld   load       p5     A   connection=wye kw=300 customers=10
  sp3  span       p5-p1  ABC lengthM=900 neutral=false
`;

checkRule(
  "open-neutral",
  "common practice, no source: the neutral of a dead section is the way back of what lives beyond it",
  BETWEEN,
  [
    ["cut in gloves", "cut sp N method gloves gloveClass 2", "danger sp"],
    ["with nothing beyond it alive", "cut sp N method gloves gloveClass 2", "", "sp3 none"],
    [
      "with another neutral beside it",
      "cut sp N method gloves gloveClass 2",
      "",
      "sp3 span p5-p1 ABC lengthM=900",
    ],
  ],
);
