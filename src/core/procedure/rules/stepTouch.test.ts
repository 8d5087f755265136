import { describe, expect, test } from "vitest";
import { checkRule, draw, parseSteps, playAll, TAP } from "../../../../tests/support/jobNotation";
import { french, spell } from "../../../../tests/support/words";

const HIGH_RODS = `${TAP}
  p1 point earthOhms=200
  k1 clamp p1-p2 A
`;
const TO_WORK =
  "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; work w1";

checkRule(
  "step-touch",
  "1910.269 Appendix C: step and touch potentials near a grounded structure",
  HIGH_RODS,
  [
    ["nobody is kept clear of the base", TO_WORK, "warning w1"],
    [
      "barricaded",
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; barricade p2; work w1",
      "note w1",
    ],
    [
      "barricaded at another point of the same pole",
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; barricade p1; work w1",
      "note w1",
    ],
    [
      "barricaded at another pole",
      "open c1 with load-break-tool; tag c1; block c1; lift k1; tag k1; check-detector; test p2 A; check-detector; ground p2 A cable 2/0; barricade p4; work w1",
      "warning w1",
    ],
    ["not said before work", "open c1; ground p2 A", ""],
  ],
);

const NEUTRAL_RAISED = `${TAP}
  rest load p1 B kw=200
  set exposureLimitVolts=20
`;

describe("what lifts the pole, and where, is told in words and never by the words of the file", () => {
  test.each([
    [
      "an upset",
      HIGH_RODS,
      "if tap clamp is put back on A, the pole, the truck and the rods stand at 2580 V above the ground that people stand on",
      /^si on repose pince de dérivation sur A, le poteau, .* 2580 V/,
    ],
    [
      "a load far away, as drawn",
      NEUTRAL_RAISED,
      "as drawn, the pole, the truck and the rods stand at 32 V above the ground that people stand on",
      /^tel que dessiné, le poteau, .* 32 V/,
    ],
  ])("%s", (_what, drawing, inEnglish, inFrench) => {
    const document = draw(drawing);
    const { findings } = playAll(document, parseSteps(TO_WORK, Object.keys(document.system.points))).at(-1)!;
    const { message, help } = findings.find((it) => it.rule === "step-touch")!;
    expect([spell(message), spell(help!)]).toEqual([
      inEnglish,
      "keep people and equipment clear of the pole's base, the truck and the rods: barricade pole with tap clamp, below the tap clamp",
    ]);
    expect(spell(message, french)).toMatch(inFrench);
  });
});

test("who has barricaded the place is not told to barricade it", () => {
  const document = draw(HIGH_RODS);
  const steps = parseSteps(
    TO_WORK.replace("; work", "; barricade p2; work"),
    Object.keys(document.system.points),
  );
  const { message, help } = playAll(document, steps)
    .at(-1)!
    .findings.find((it) => it.rule === "step-touch")!;
  expect(spell(message)).toMatch(/ it is barricaded$/);
  expect(help).toBeUndefined();
});

test.each([
  ["pole", /the pole, the truck and the rods stand/, /of the pole's base, the truck/],
  ["pad", /the enclosure, the truck and the rods stand/, /of the enclosure, the truck/],
  [
    "station",
    /, all that is bonded to the neutral there, the truck and/,
    /of all that is bonded to the neutral there/,
  ],
  [
    "service",
    /, all that is bonded to the neutral there, the truck and/,
    /of all that is bonded to the neutral there/,
  ],
])("what is lifted at a %s is called what stands there", (kind, what, wanted) => {
  const document = draw(`${HIGH_RODS}\n p2 point kind=${kind}`);
  const { message, help } = playAll(document, parseSteps(TO_WORK, Object.keys(document.system.points)))
    .at(-1)!
    .findings.find((it) => it.rule === "step-touch")!;
  expect(spell(message)).toMatch(what);
  expect(spell(help!)).toMatch(wanted);
});
