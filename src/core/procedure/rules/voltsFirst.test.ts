import { describe, expect, test } from "vitest";
import { checkRule, draw, TAP } from "../../../../tests/support/jobNotation";
import { rehearse } from "..";

const MAIN = "mn1 main h1-h2 12\nld1 load h2 12 connection=delta kw=8 customers=3\nh2 point kind=service";

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
      "and the bank is energized under it, where nobody has a switch of his own",
      "open c2 A; pull m1; work w1; replace m1; close c2 A",
      "",
    ],
    [
      "the main goes in with the bank dead, and the bank is energized under it",
      "open c2 A; open mn1; work w1; close mn1; close c2 A",
      "note mn1",
      MAIN,
    ],
    [
      "the main stays out until the volts are read",
      "open c2 A; open mn1; work w1; close c2 A; test p6 12 expect live; close mn1",
      "",
      MAIN,
    ],
    ["nobody took the main out", "open c2 A; work w1; close c2 A", "", MAIN],
    [
      "a service that was spliced",
      "open c2 A; open mn1; work w1; close c2 A; close mn1",
      "note mn1",
      `${MAIN}\nm1 none\nsv span p6-h1 12 construction=secondary parted=12\nw1 work h1 12 does=sv`,
    ],
    [
      "a service that was spliced, read at the house",
      "open c2 A; open mn1; work w1; close c2 A; test h1 12 expect live; close mn1",
      "",
      `${MAIN}\nm1 none\nsv span p6-h1 12 construction=secondary parted=12\nw1 work h1 12 does=sv`,
    ],
    [
      "work on something else",
      "open c2 A; pull m1; work w1; close c2 A; replace m1 method gloves gloveClass 00",
      "",
      "w1 work p5 A",
    ],
  ],
);

describe("volts-first: before the crew leaves they are read at the latest", () => {
  const atEnd = (steps: string) =>
    rehearse(draw(`${TAP}\nw1 work p5 A does=t1`, steps))
      .findings.filter((it) => it.rule === "volts-first")
      .map(({ severity, where }) => `${severity} ${where}`);

  test.each([
    [
      "the meter back in dead, and nobody read anything",
      "pull m1; work w1; replace m1; close c2 A",
      ["note t1"],
    ],
    ["read once it was live", "pull m1; work w1; replace m1; close c2 A; test p6 12 expect live", []],
    ["read at the house", "pull m1; work w1; replace m1; close c2 A; test h1 12 expect live", []],
    ["read before the work alone", "test p6 12 expect live; work w1; close c2 A", ["note t1"]],
    ["left dead", "work w1", []],
    ["left with the meter out", "pull m1; work w1; close c2 A", []],
  ])("%s", (_why, steps, wanted) => {
    expect(atEnd(`open c2 A; ${steps}`)).toEqual(wanted);
  });
});
