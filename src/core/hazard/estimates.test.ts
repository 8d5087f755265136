import { expect, test } from "vitest";
import { draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";
import { jobOf, settingsOf, type StillhotDocument, type WorkPoint } from "../document";
import { LowRank } from "./lowRank";
import { setsUpTo } from "./search";
import { upsetsOf } from "./upsets";

const FIGURES = ["volts", "exposureVolts", "exposureToEarthVolts", "groundAmps"] as const;

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
  for (let seed = 1; seed <= draws(24); seed++)
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
