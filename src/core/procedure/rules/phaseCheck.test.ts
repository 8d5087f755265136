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
