import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "permit-release",
  "1910.269(m)(3)(xiii): crews have released before anyone begins to re-energize",
  `${TAP}
  sp2  span         p4-p7   A    lengthM=70
  c3   cutout       p7-p8   A    fuse=K6
  t2   transformer  p8-p9   A    connection=single kva=15 primaryKv=7.2 secondaryV=240
  ld2  load         p9      12   connection=delta kw=4 customers=1
`,
  [
    [
      "the permit is still held",
      "request-permit; receive-permit; confirm; open c1; lift k1; attach k1",
      "danger k1",
    ],
    ["released", "request-permit; receive-permit; confirm; open c1; lift k1; release-permit; attach k1", ""],
    ["without the operator's word", "open c1; lift k1; attach k1", "danger k1"],
    ["the operator was asked", "open c1; lift k1; ask; attach k1", ""],
    [
      "to have a neighbour's reclosing held is no word on the section",
      "open c1; lift k1; ask n1; attach k1",
      "danger k1",
      "n1 nearby span=sp2 relation=crossing kvLL=12.47",
    ],
    ["a tap that needs no permit", "open c2; close c2", "", "w1 work p5 A"],
    ["energizing nothing", "request-permit; receive-permit; open c1; lift k1; close c1", ""],
  ],
);
