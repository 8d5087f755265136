import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "phase-check",
  "common practice: two supplies are joined only phase to phase and close in angle",
  `${TAP}
  d1 disconnect p3-p20 A open=A
  s2 source p20 A kvLL=12.47
`,
  [
    ["the same phase of another source", "close d1", ""],
    ["its angle is 30° off", "close d1", "danger d1", "s2 source p20 A kvLL=12.47 angleDeg=30"],
    ["another phase hangs there", "close d1", "danger d1", "s2 source p20 A kvLL=12.47 angleDeg=-120"],
    ["10° off", "close d1", "", "s2 source p20 A kvLL=12.47 angleDeg=10"],
    ["dead on one side", "open c1; close d1", "", "s2 source p20 A kvLL=12.47 angleDeg=30"],
  ],
);

checkRule(
  "phase-check",
  "common practice: the cutouts of a bank are closed one by one, and a phase that its delta regenerates is no second supply",
  `
  s1 source p1 ABC kvLL=12.47
  c1 cutout p1-p2 ABC open=A
  t1 transformer p2-p3 ABC connection=Y-D kva=75 primaryKv=12.47 secondaryV=240
`,
  [["the last cutout of a floating wye bank", "close c1 A", ""]],
);
