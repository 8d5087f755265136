import { expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { draw } from "../../../tests/support/jobNotation";
import { randomDocument } from "../../../tests/support/randomSystems";
import { jobOf, settingsOf, type StillhotDocument, type WorkPoint } from "../document";
import { LowRank } from "./lowRank";
import { setsUpTo } from "./search";
import { leastWithstand } from "./threats";
import { upsetsOf } from "./upsets";

const FIGURES = ["volts", "exposureVolts", "exposureToEarthVolts", "groundAmps"] as const;

/** One switch onto a ground set, beside what keeps the conductor from floating with the set lifted. */
function ontoGrounds(clearingSeconds: number) {
  const document = draw(`
    s1 source sub  A kvLL=12.47 z1Ohms=[0,3] z0Ohms=[0,3]
    m1 span   sub-a A lengthM=800
    c1 cutout a-x  A open=A
    f1 fault  x    A ohms=5000
    g1 ground x    A cable=2
    set clearingSeconds=${clearingSeconds}
    w1 work   x    A
  `);
  const { system } = document;
  const settings = settingsOf(document);
  const question = { system, settings, workPoint: Object.values(jobOf(document).workPoints)[0]! };
  const lowRank = new LowRank(question, upsetsOf(system, settings));
  return { lowRank, withstand: leastWithstand(system, settings) };
}

/** A random drawing as a search asks it, and its sets of one upset and of two. */
function drawnFrom(seed: number, nonlinearLoads: boolean) {
  const document = randomDocument(seed, { parts: 12, nonlinearLoads }) as unknown as StillhotDocument;
  const { system } = document;
  const settings = settingsOf(document);
  const workPoint = Object.values(jobOf(document).workPoints)[0] as WorkPoint;
  const upsets = upsetsOf(system, settings);
  return { lowRank: new LowRank({ system, settings, workPoint }, upsets), sets: [...setsUpTo(upsets, 2)] };
}

test("what all ports at once give is what each gives carried by itself, but for last digits", () => {
  const off: string[] = [];
  let asked = 0;
  for (let seed = 1; seed <= draws(48); seed++)
    for (const nonlinearLoads of [false, true]) {
      const { lowRank, sets } = drawnFrom(seed, nonlinearLoads);
      for (const set of sets) {
        const about = lowRank.estimateAfter(set);
        if (about === undefined) continue;
        asked++;
        const exact = lowRank.outcomeAfter(set);
        about.forEach((it, nth) => {
          const told = exact?.[nth];
          const areNear = FIGURES.every(
            (of) => Math.abs(it[of] - told![of]) <= 1e-6 * (1 + Math.abs(told![of])),
          );
          if (told?.live !== it.live || !areNear)
            off.push(`${seed} ${set.join()}: ${JSON.stringify(it)} for ${JSON.stringify(told)}`);
        });
      }
    }
  expect(off).toEqual([]);
  expect(asked).toBeGreaterThan(100);
});

test("sets that leave conductors floating are not estimated: their volts are known to a few digits only", () => {
  let floating = 0;
  for (let seed = 1; seed <= draws(24); seed++) {
    const { lowRank, sets } = drawnFrom(seed, false);
    for (const set of sets) {
      if (!lowRank.isRough(set)) continue;
      floating++;
      expect(lowRank.estimateAfter(set), `${seed} ${set.join()}`).toBeUndefined();
    }
  }
  expect(floating).toBeGreaterThan(10);
});

test("a set that brings a jumper near what it withstands is not estimated, and asked plainly where it is nearer still", () => {
  const { lowRank, withstand } = ontoGrounds(1);
  const amps = lowRank.outcomeAfter([0])![0]!.groundAmps;
  /** What is asked where so much of the withstand goes through it: constant I²t. */
  const at = (share: number) => ontoGrounds(((share * withstand) / amps) ** 2).lowRank;
  expect(at(0.5).estimateAfter([0])![0]!.groundAmps).toBeCloseTo(amps, 3);
  expect(at(0.9).estimateAfter([0])).toBeUndefined();
  expect(at(0.9).outcomeAfter([0])![0]!.groundAmps).toBeCloseTo(amps, 6);
  expect(at(0.995).outcomeAfter([0])).toBeUndefined();
  expect(at(0.995).bodyAmpsAfter([0])).toBeUndefined();
});
