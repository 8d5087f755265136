import { describe, expect, test } from "vitest";
import capacitor from "../../../../shared/reference/ferroresonance-and-backfeed.json";
import links from "../../../../shared/reference/fuse-links.json";
import { coldLoadSurge, fullLoadAmps, inrushSurges, melts } from "./inrush";
import { DISCHARGE_SECONDS, trappedJoules, trappedVolts } from "./trappedCharge";

describe("Inrush: shared/reference/fuse-links.json, transformerFusingExample and conventions", () => {
  const example = links.transformerFusingExample;
  const amps = fullLoadAmps({
    kva: example.kva,
    primaryKv: example.voltsToGround / 1000,
    connection: "single",
  });

  test("full load of the published example", () => expect(amps).toBeCloseTo(example.fullLoadAmps, 2));

  test("12 times for 0.1 s and 25 times for 0.01 s", () => {
    const [long, short] = inrushSurges(amps);
    expect(long!.amps).toBeCloseTo(example.inrushAmps0p1s, 1);
    expect(short!.amps).toBeCloseTo(example.inrushAmps0p01s, 1);
    expect([long!.seconds, short!.seconds]).toEqual([0.1, 0.01]);
  });

  test("an 8 A K link holds it, as the example says; a link a quarter of that does not", () => {
    for (const surge of inrushSurges(amps)) expect(melts({ type: "K", amps: 8 }, surge)).toBe(false);
    expect(inrushSurges(amps).some((surge) => melts({ type: "K", amps: 2 }, surge))).toBe(true);
  });

  test.each([
    ["one unit between phases", { kva: 50, primaryKv: 12.47, connection: "single" as const }, 4.01],
    ["a three-phase bank", { kva: 150, primaryKv: 12.47, connection: "D-Yg" as const }, 6.945],
    [
      "an open wye, two units to the neutral",
      { kva: 50, primaryKv: 12.47, connection: "openY-openD" as const },
      3.472,
    ],
  ])("%s", (_why, bank, wanted) => expect(fullLoadAmps(bank)).toBeCloseTo(wanted, 2));

  test("load that comes back cold is twice what it was, for longer than a link takes (from memory)", () => {
    expect(coldLoadSurge(30).amps).toBe(60);
    expect(melts({ type: "K", amps: 25 }, coldLoadSurge(24.9))).toBe(false);
    expect(melts({ type: "K", amps: 25 }, coldLoadSurge(25))).toBe(true); // 50 A is its long-time melting current
  });
});

describe(`Trapped charge: ${capacitor.capacitor.text}`, () => {
  test.each([7200, 12470, 240])("%i V starts at the crest and is at 50 V after five minutes", (rated) => {
    expect(trappedVolts(rated, 0)).toBeCloseTo(Math.SQRT2 * rated, 6);
    expect(trappedVolts(rated, DISCHARGE_SECONDS)).toBeCloseTo(50, 6);
    expect(trappedVolts(rated, 60)).toBeGreaterThan(50);
    expect(trappedVolts(rated, 2 * DISCHARGE_SECONDS)).toBeLessThan(50);
  });

  test("below 50 V nothing is said of the time", () => expect(trappedVolts(24, 10)).toBeCloseTo(33.94, 2));

  test("what was found discharged holds nothing", () => expect(trappedVolts(7200, Infinity)).toBe(0));

  test("energy: 100 kvar at 7.2 kV is 5.117 µF, and holds 265 J at the crest", () => {
    // C = 100 000 / (2π·60·7200²); ½·C·(√2·7200)² = Q/ω = 265.3 J
    expect(trappedJoules(100, 7200, Math.SQRT2 * 7200, 60)).toBeCloseTo(265.26, 2);
  });
});
