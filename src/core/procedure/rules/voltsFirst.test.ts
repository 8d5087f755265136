import { checkRule, TAP } from "../../../../tests/support/jobNotation";

checkRule(
  "volts-first",
  "common practice, no source: the secondary volts of a changed transformer are read before a customer is put onto it",
  `${TAP}
  w1 work p5 A does=t1
`,
  [
    [
      "the meter goes in unread",
      "open c2 A; pull m1; work w1; close c2 A; replace m1 method gloves gloveClass 00",
      "note m1",
    ],
    [
      "read at the bushings first",
      "open c2 A; pull m1; work w1; close c2 A; test p6 12 expect live; replace m1 method gloves gloveClass 00",
      "",
    ],
    [
      "read before it was changed",
      "test p6 12 expect live; open c2 A; pull m1; work w1; close c2 A; replace m1 method gloves gloveClass 00",
      "note m1",
    ],
    ["the meter goes in with the bank dead", "open c2 A; pull m1; work w1; replace m1", ""],
    [
      "work on something else",
      "open c2 A; pull m1; work w1; close c2 A; replace m1 method gloves gloveClass 00",
      "",
      "w1 work p5 A",
    ],
  ],
);
