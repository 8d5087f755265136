import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "jumper-order",
  "1910.269(l)(6)(i) and (ii): the dead end is made first, the source end comes off first",
  `${TAP}
  sp1 lead p3-p4 A
`,
  [
    ["a lead is cut at its dead end first", "cut sp1 at p4", "warning sp1"],
    ["at its live end", "cut sp1 at p3", ""],
    ["no end is named: taken to be right", "cut sp1", ""],
    ["remade at its live end first", "cut sp1 at p3; join sp1 at p3", "warning sp1"],
    ["at its dead end", "cut sp1 at p3; join sp1 at p4", ""],
    ["dead on both sides", "open c1; cut sp1 at p4", ""],
    ["a clamp comes off its stirrup with the lead dead", "open c1; lift k1", ""],
    [
      "a clamp comes off and its lead stays live from the other side",
      "lift k1",
      "warning k1",
      "d1 disconnect p4-p20 A\ns2 source p20 A kvLL=12.47\ns1 source sub ABC kvLL=12.47 on=false",
    ],
    [
      "a clamp goes on with its lead live and the line dead",
      "attach k1",
      "warning k1",
      "k1 clamp p1-p2 A open=A\nd1 disconnect p4-p20 A\ns2 source p20 A kvLL=12.47\ns1 source sub ABC kvLL=12.47 on=false",
    ],
  ],
);
