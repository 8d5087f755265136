import { describe, expect, test } from "vitest";
import { degreesApart, standApart, voltsApart } from "./apart";

const at = (volts: number, angleDeg = 0) => ({ volts, angleDeg });

describe("Two conductors that are to be joined (common practice: 20°, and a quarter of the higher volts)", () => {
  test.each([
    ["alike", at(7200), at(7200), 0, 0, false],
    ["20° apart", at(7200), at(7200, 20), 20, 2 * 7200 * Math.sin(Math.PI / 18), false],
    ["21° apart", at(7200), at(7200, -21), 21, 2 * 7200 * Math.sin((21 * Math.PI) / 360), true],
    ["over the half turn", at(7200, -170), at(7200, 170), 20, 2 * 7200 * Math.sin(Math.PI / 18), false],
    ["a quarter of the higher apart", at(7200), at(5400), 0, 1800, false],
    ["more than that", at(7200), at(5399), 0, 1801, true],
    ["whichever is the higher", at(5399), at(7200), 0, 1801, true],
    ["a fifth", at(7200), at(5760), 0, 1440, false],
    ["half turned, and no supply on either side", at(20), at(20, 180), 180, 40, false],
    ["50 V between them, as what a dead short leaves", at(25), at(25, 180), 180, 50, false],
    ["more", at(26), at(26, 180), 180, 52, true],
    ["volts that no equation gives", at(Infinity), at(Infinity), 0, Infinity, false],
    ["of one side alone", at(Infinity), at(7200), 0, Infinity, true],
  ])("%s", (_why, one, other, degrees, volts, apart) => {
    expect(degreesApart(one, other)).toBeCloseTo(degrees, 9);
    if (Number.isFinite(volts)) expect(voltsApart(one, other)).toBeCloseTo(volts, 6);
    else expect(voltsApart(one, other)).toBe(volts);
    expect(standApart(one, other)).toBe(apart);
  });
});
