import { checkRule } from "../../../../tests/support/jobNotation";

checkRule(
  "regulator-neutral",
  "common practice, no source: a regulator is bypassed at neutral and blocked there",
  `
  s1 source sub ABC kvLL=12.47
  main span sub-p0 ABC lengthM=1000
  ds disconnect p0-p1 ABC
  r1 regulator p1-p2 ABC taps={"A":5,"C":4}
  dl disconnect p2-p3 ABC
  by disconnect p0-p3 ABC open=ABC
  ld1 load p3 ABC kw=900
`,
  [
    ["off neutral on that phase", "close by A", "danger r1"],
    ["at neutral on that phase, and not blocked", "close by B", "warning r1"],
    ["each phase as it is closed", "close by B; close by C", "danger r1"],
    ["run to neutral and blocked", "set-position r1 to neutral; block r1; close by A", ""],
    ["run to neutral and not blocked", "set-position r1 to neutral; close by A", "warning r1"],
    ["taken out of the line first", "open dl; close by", ""],
    ["its disconnect closed beside a closed bypass", "open dl; close by; close dl A", "danger r1"],
  ],
);
