import { describe, expect, test } from "vitest";
import { draw, parseSteps, playAll } from "../../../../tests/support/jobNotation";
import { beginJob, type JobState } from "../job/state";
import {
  capacitorsOf,
  capacitorsOn,
  heldCharge,
  isByItself,
  terminalsOf,
  unitVolts,
  wasFoundCharged,
} from "./capacitors";

const BANK = `
  s1 source     sub   ABC kvLL=12.47
  d1 disconnect sub-p1 ABC
  sp1 span      p1-p2 ABC lengthM=300
  cb capacitor  p2    ABC kvar=300 kvLL=12.47
`;

const after = (drawing: string, steps: string): JobState => {
  const document = draw(drawing);
  return playAll(document, parseSteps(steps, [])).at(-1)?.state ?? beginJob(document);
};
const one = (state: JobState) => capacitorsOf(state)[0]!;

/** Seconds since it lost its supply; nothing where it holds no charge. */
const seconds = (drawing: string, steps: string) => {
  const state = after(drawing, steps);
  return heldCharge(state, ...one(state))?.seconds;
};

describe("The charge that a bank still holds", () => {
  test.each([
    ["supplied", "note", undefined],
    ["just opened, with the seconds of the steps since", "open d1; wait 60", 60],
    ["shorted after five minutes", "open d1; wait 300; ground p2 ABC", undefined],
    ["shorted too early it counts as holding", "open d1; wait 100; ground p2 ABC; wait 20", 120],
    [
      "shorted too early, and once more when its time is over",
      "open d1; wait 100; ground p2 ABC as g1; wait 300; unground g1; ground p2 ABC",
      undefined,
    ],
    ["shorted at another place of the same line", "open d1; wait 300; ground p1 ABC", undefined],
    ["waited, and nothing that shorted it", "open d1; wait 400", 400],
    ["supplied again meanwhile", "open d1; wait 300; close d1; open d1; wait 10", 10],
    [
      "supplied again after it was shorted",
      "open d1; wait 300; ground p2 ABC as g1; unground g1; close d1; open d1; wait 30",
      30,
    ],
    ["the phase that was opened last counts", "open d1 A; wait 200; open d1 BC; wait 40", 40],
    ["an hour before it was opened counts for nothing", "wait 3600; open d1; wait 100; ground p2 ABC", 100],
    [
      "shorted, and the set taken off again",
      "open d1; wait 300; ground p2 ABC as g1; unground g1; wait 10",
      undefined,
    ],
    [
      "a set that came too early shorts nothing by waiting",
      "open d1; wait 100; ground p2 ABC; wait 400",
      500,
    ],
    ["one phase left unshorted", "open d1; wait 300; ground p2 AB", 300],
  ])("%s", (_why, steps, wanted) => {
    const found = seconds(BANK, steps);
    if (wanted === undefined) expect(found).toBeUndefined();
    // Each step takes some time of its own.
    else expect(found! - wanted).toBeGreaterThanOrEqual(0);
    if (wanted !== undefined) expect(found! - wanted).toBeLessThan(150);
  });

  test("volts: the crest at first, 50 V after five minutes", () => {
    const state = after(BANK, "open d1; wait 300");
    const held = heldCharge(state, ...one(state))!;
    expect(held.volts).toBeCloseTo(
      50 * ((Math.SQRT2 * 12470) / Math.sqrt(3) / 50) ** (1 - held.seconds / 300),
      6,
    );
  });

  test.each([
    ["found under supply", "", true],
    ["found without supply", "d1 disconnect sub-p1 ABC open=ABC", false],
    [
      "found without supply, and charged",
      "d1 disconnect sub-p1 ABC open=ABC\ncb capacitor p2 ABC kvar=300 kvLL=12.47 charged=true",
      true,
    ],
    ["found with its own switch open", "cb capacitor p2 ABC kvar=300 kvLL=12.47 open=ABC", false],
    ["found with one phase under supply", "d1 disconnect sub-p1 ABC open=AB", true],
  ])("%s", (_why, more, wanted) => {
    const state = beginJob(draw(`${BANK}\n${more}`));
    expect(wasFoundCharged(state, one(state)[1])).toBe(wanted);
  });

  test("found charged it holds the crest of its volts", () => {
    const state = beginJob(
      draw(
        `${BANK}\nd1 disconnect sub-p1 ABC open=ABC\ncb capacitor p2 ABC kvar=300 kvLL=12.47 charged=true`,
      ),
    );
    expect(heldCharge(state, ...one(state))!.volts).toBeCloseTo((Math.SQRT2 * 12470) / Math.sqrt(3), 6);
  });
});

test.each([
  ["in wye, a unit stands between a phase and the neutral", "wye", 12470 / Math.sqrt(3)],
  ["in delta, between two phases", "delta", 12470],
])("%s", (_why, connection, volts) => {
  const state = beginJob(draw(`${BANK}\ncb capacitor p2 ABC kvar=300 kvLL=12.47 connection=${connection}`));
  expect(unitVolts(one(state)[1])).toBeCloseTo(volts, 6);
});

test("it hangs on the conductors of its closed phases", () => {
  const state = beginJob(draw(`${BANK}\ncb capacitor p2 ABC kvar=300 kvLL=12.47 open=B`));
  expect(terminalsOf(one(state)[1])).toEqual(["p2/A", "p2/C"]);
  expect(capacitorsOn(state, ["p1/A"] as never)).toHaveLength(1);
  expect(capacitorsOn(state, ["p1/B"] as never)).toHaveLength(0);
  expect(capacitorsOn(state, ["p1/B", "p1/C"] as never)).toHaveLength(1);
});

test.each([
  ["by itself", "", "open d1", true],
  ["a load drains it", "l1 load p1 ABC connection=wye kw=5", "open d1", false],
  ["a load before the opening drains nothing", "l1 load sub ABC connection=wye kw=5", "open d1", true],
  [
    "a transformer drains it",
    "t1 transformer p2-p3 ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=480",
    "open d1",
    false,
  ],
  [
    "a transformer that feeds it drains it",
    "t1 transformer p3-p2 ABC connection=D-Yg kva=150 primaryKv=12.47 secondaryV=12470",
    "open d1",
    false,
  ],
  [
    "a load on another phase alone",
    "l1 load p2 A connection=wye kw=5\ncb capacitor p2 BC kvar=300 kvLL=12.47",
    "open d1",
    true,
  ],
])("behind its own opening: %s", (_why, more, steps, wanted) => {
  const state = after(`${BANK}\n${more}`, steps);
  expect(isByItself(state, one(state)[1])).toBe(wanted);
});
