import { describe, expect, test } from "vitest";
import { assess, isUnreadable, readDocument, type StillhotDocument } from "../../src/core";

/**
 * The example of three windings in Stevenson's and in Grainger and Stevenson's books on power system analysis (from memory):
 * primary Y, 66 kV, 15 MVA; secondary Y, 13.2 kV, 10 MVA; tertiary delta, 2.3 kV, 5 MVA. Leakage reactances: primary to
 * secondary 7 % and primary to tertiary 9 % on 15 MVA, secondary to tertiary 8 % on 10 MVA, which is 12 % on 15 MVA. Their star
 * on 15 MVA: primary 2 %, secondary 5 %, tertiary 7 %.
 */
const BOOK = {
  kind: "threeWinding",
  from: "p1",
  to: "p2",
  alt: "p3",
  phases: "ABC",
  connection: "Yg-Yg-D",
  kva: 15000,
  primaryKv: 66,
  secondaryV: 13200,
  thirdV: 2300,
  ...{
    rPercent: 0,
    xPercent: 7,
    rThirdPercent: 0,
    xThirdPercent: 9,
    rBetweenPercent: 0,
    xBetweenPercent: 12,
  },
  excitingPercent: 0,
};
const STAR = { primary: 0.02, secondary: 0.05, tertiary: 0.07 };
const STIFF = { kind: "source", at: "p1", phases: "ABC", kvLL: 66, z1Ohms: [0, 1e-6], z0Ohms: [0, 1e-6] };

function drawn(elements: object, job: object = {}): StillhotDocument {
  const points = Object.fromEntries(["p1", "p2", "p3", "p4"].map((id) => [id, { earthOhms: 1e-6 }]));
  const read = readDocument(
    JSON.stringify({ format: "stillhot", formatVersion: 1, system: { points, elements }, ...job }),
  );
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

const assessed = (elements: object) => {
  const { conductors, elements: amps } = assess(drawn(elements));
  return {
    volts: (id: string) => conductors[id as never] as { volts: number; angleDeg: number; state: string },
    amps: (id: string) => (amps[id as never] as { amps: Record<string, number> }).amps,
  };
};
/** Nothing to speak of between the phases there. */
const bolted = (at: string) => ({ kind: "fault", at, phases: "ABC", to: "phases", ohms: 1e-7 });

describe("three windings on one core: a worked example", () => {
  const bank = { s1: STIFF, tw1: BOOK };

  test("with nothing on them the sides have their rated volts, and the delta lags by 30°", () => {
    const { volts } = assessed({
      ...bank,
      ld1: { kind: "load", at: "p3", phases: "ABC", connection: "delta", kw: 0 },
    });
    expect(volts("p2/A").volts).toBeCloseTo(13200 / Math.sqrt(3), 0);
    expect(volts("p2/A").angleDeg).toBeCloseTo(0, 2);
    expect(volts("p3/A").volts).toBeCloseTo(2300 / Math.sqrt(3), 0);
    expect(volts("p3/A").angleDeg).toBeCloseTo(-30, 2);
  });

  // A short on one low side leaves the other at the volts of the star's middle: what drops in that side's own share.
  test.each([
    ["p2", "p3", 2300, STAR.secondary / (STAR.primary + STAR.secondary)],
    ["p3", "p2", 13200, STAR.tertiary / (STAR.primary + STAR.tertiary)],
  ])("three phases shorted at %s leave %s at its share of the volts", (at, other, rated, share) => {
    const { volts } = assessed({ ...bank, f1: bolted(at) });
    expect(volts(`${other}/A`).volts / (rated / Math.sqrt(3))).toBeCloseTo(share, 3);
  });

  test("5 MW and 7.5 MW of load drop what the star of the book drops", () => {
    const ld = (at: string, kw: number, connection: string) => ({
      kind: "load",
      at,
      phases: "ABC",
      connection,
      kw,
      model: "Z",
    });
    const { volts } = assessed({ ...bank, ld1: ld("p3", 5000, "delta"), ld2: ld("p2", 7500, "wye") });
    // Resistances of 15/7.5 = 2 and 15/5 = 3 of the base, each behind its share, beside each other behind the primary's.
    const low = inverse([2, STAR.secondary]);
    const third = inverse([3, STAR.tertiary]);
    const together = inverse([low[0] + third[0], low[1] + third[1]]);
    const middle = size(together) / size([together[0], together[1] + STAR.primary]);
    expect(volts("p2/A").volts / (13200 / Math.sqrt(3))).toBeCloseTo(
      (middle * 2) / size([2, STAR.secondary]),
      4,
    );
    expect(volts("p3/A").volts / (2300 / Math.sqrt(3))).toBeCloseTo(
      (middle * 3) / size([3, STAR.tertiary]),
      4,
    );
  });
});

const size = ([re, im]: readonly [number, number]) => Math.hypot(re, im);
const inverse = ([re, im]: readonly [number, number]): [number, number] => {
  const square = re * re + im * im;
  return [re / square, -im / square];
};

describe("what feeds one side feeds the others", () => {
  const switched = {
    s1: { ...STIFF, at: "p4" },
    d1: { kind: "disconnect", from: "p4", to: "p1", phases: "ABC", open: "ABC" },
    tw1: BOOK,
  };

  test("a machine on the third winding puts volts on the primary and on the secondary", () => {
    const { volts } = assessed({
      ...switched,
      g1: { kind: "generator", at: "p3", phases: "ABC", kva: 2000, volts: 2300, on: true },
    });
    expect(volts("p1/A")).toMatchObject({ state: "backfed" });
    expect(volts("p1/A").volts).toBeCloseTo(66000 / Math.sqrt(3), -3);
    expect(volts("p2/A")).toMatchObject({ state: "backfed" });
  });

  test("and one that could start there is a threat to whoever works on the secondary", () => {
    const document = drawn(
      { ...switched, g1: { kind: "generator", at: "p3", phases: "ABC", kva: 2000, volts: 2300 } },
      {
        job: {
          task: "",
          workPoints: { w1: { at: "p2", conductors: "ABC" } },
          tools: [],
          permit: "none",
          steps: [],
        },
      },
    );
    const [work] = Object.values(assess(document).workPoints);
    expect(work!.verdict).toBe("could-go-live");
    expect(work!.threats.some(({ upsets }) => upsets.some(({ kind }) => kind === "start"))).toBe(true);
  });

  test("a delta on the core holds the volts of a phase that is open, where nothing hangs on it", () => {
    const onePhaseOpen = { ...switched, d1: { ...switched.d1, open: "A" } };
    expect(assessed(onePhaseOpen).volts("p2/A").volts).toBeGreaterThan(6000);
    const without = { ...onePhaseOpen, tw1: { ...BOOK, connection: "Yg-Yg-Y" } };
    expect(assessed(without).volts("p2/A").volts).toBeLessThan(100);
  });

  test("a unit on a pole with two secondaries", () => {
    const { volts } = assessed({
      s1: { ...STIFF, kvLL: 12.47 },
      tw1: {
        kind: "threeWinding",
        from: "p1",
        to: "p2",
        alt: "p3",
        phases: "B",
        connection: "single",
        kva: 50,
        primaryKv: 7.2,
        secondaryV: 240,
        thirdV: 277,
        excitingPercent: 0,
      },
      ld1: { kind: "load", at: "p3", phases: "B", kw: 0 },
    });
    expect(volts("p2/1").volts).toBeCloseTo(120, 0);
    expect(volts("p2/2").volts).toBeCloseTo(120, 0);
    expect(volts("p3/B").volts).toBeCloseTo(277, 0);
  });
});

test("leakages that no core can have are refused by name", () => {
  const points = { p1: {}, p2: {}, p3: {} };
  const read = readDocument(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      system: { points, elements: { tw1: { ...BOOK, xBetweenPercent: 40 } } },
    }),
  );
  expect(isUnreadable(read) && read.problems.map(({ path }) => path)).toEqual([
    "system.elements.tw1.xBetweenPercent",
  ]);
});
