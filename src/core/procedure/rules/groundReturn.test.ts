import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "ground-return",
  "1910.269(n)(4)(iii): impedance low enough that protective devices are not delayed",
  TAP,
  [
    ["to a rod alone", "open c1; ground p3 A to earth", "warning g1"],
    [
      "to a neutral that is broken on the way home",
      "open c1; ground p4 A",
      "warning g1",
      "sp1 span p3-p4 A lengthM=60 parted=N",
    ],
    ["to the neutral", "open c1; ground p3 A", ""],
    ["to both", "open c1; ground p3 A to both", ""],
    ["broken since it went on", "open c1; ground p4 A; cut sp1 N; work w1", "warning g1"],
    [
      "beyond a neutral that is open, while a set on this side of it holds the phase",
      "open c1; ground p3 A; ground p4 A",
      "",
      "sp1 span p3-p4 A lengthM=60 parted=N",
    ],
    [
      "beyond a neutral that is open, while a rod alone holds the phase on this side of it",
      "open c1; ground p3 A to earth; ground p4 A",
      "warning g2",
      "sp1 span p3-p4 A lengthM=60 parted=N",
    ],
    [
      "to earth, on both phases of a line whose source is not earthed",
      "ground p20 AB to earth",
      "",
      "s1 source sub ABC kvLL=4.8 earthed=false\nc9 cutout sub-p20 AB open=AB neutral=false",
    ],
    [
      "to earth, on one of them",
      "ground p20 A to earth",
      "warning g1",
      "s1 source sub ABC kvLL=4.8 earthed=false\nc9 cutout sub-p20 AB open=AB neutral=false",
    ],
    [
      "to earth, on both phases of one whose source is earthed",
      "ground p20 AB to earth",
      "warning g1",
      "c9 cutout sub-p20 AB open=AB neutral=false",
    ],
    [
      "on the house's side of a service that is down, neutral and all",
      "ground h1 12",
      "",
      "sv span p6-h1 12 construction=secondary parted=12N\nm1 none",
    ],
    [
      "on a service whose neutral alone is down",
      "ground h1 12",
      "warning g1",
      "sv span p6-h1 12 construction=secondary parted=N\nm1 none",
    ],
    ["a set found there on a rod", "open c1; work w1", "warning gx", "gx ground p2 A to=earth"],
  ],
);
