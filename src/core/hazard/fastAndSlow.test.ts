import { describe, expect, test } from "vitest";
import {
  jobOf,
  readDocument,
  settingsOf,
  type Settings,
  type StillhotDocument,
  type WorkPoint,
} from "../document";
import { type Threat, threatsByBruteForce, threatsTo, upsetsOf } from ".";
import { asksFew, draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";

/** What makes two lists of threats the same: the sets and conductors, the path's source, and the numbers. */
const signature = (threat: Threat): string =>
  `${threat.strength} ${threat.upsets.map((it) => `${it.kind}:${it.element}${it.phase ?? ""}`).join("+")} ${threat.conductor}`;

function bothWays(document: StillhotDocument): { fast: Threat[]; byParts: Threat[]; plain: Threat[] } {
  const settings: Settings = settingsOf(document);
  const workPoint = Object.values(jobOf(document).workPoints)[0] as WorkPoint;
  return {
    fast: threatsTo({ system: document.system, settings, workPoint }).threats,
    byParts: threatsTo({ system: document.system, settings, workPoint }, { mostSetsOneByOne: 0 }).threats,
    plain: threatsByBruteForce({ system: document.system, settings, workPoint }),
  };
}

/** Volts that decide nothing may differ by rounding: one part in ten thousand, or a millivolt. */
const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-3 + 1e-4 * Math.max(Math.abs(a), Math.abs(b));

const FIGURES = ["volts", "exposureVolts", "exposureToEarthVolts", "groundAmps"] as const;

function readable(seed: number, parts: number, nonlinearLoads: boolean): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts, nonlinearLoads })));
  return "document" in read ? read.document : undefined;
}

describe("H5 no threat up to strength 3 is missed: the fast search finds what brute force finds", () => {
  for (const [name, parts, nonlinear, from, to] of [
    ["small drawings", 7, false, 0, 150],
    ["larger drawings", 12, false, 1000, 1060],
    ["loads of every model", 8, true, 2000, 2060],
  ] as const)
    test(name, () => {
      let asked = 0;
      for (let seed = from; seed < from + draws(to - from); seed++) {
        const document = readable(seed, parts, nonlinear);
        if (document === undefined) continue;
        const upsetCount = upsetsOf(document.system, settingsOf(document)).length;
        if (upsetCount > (asksFew ? 9 : 14)) continue;
        const { fast, byParts, plain } = bothWays(document);
        asked++;
        expect(fast.map(signature), `seed ${seed}`).toEqual(plain.map(signature));
        expect(byParts.map(signature), `seed ${seed}, by parts`).toEqual(plain.map(signature));
        const apart = fast.flatMap((threat, index) =>
          FIGURES.filter((key) => !near(threat[key], plain[index]![key])).map(
            (key) => `${signature(threat)} ${key} ${threat[key]} ${plain[index]![key]}`,
          ),
        );
        expect(apart, `seed ${seed}`).toEqual([]);
      }
      if (!asksFew) expect(asked).toBeGreaterThan((to - from) / 3);
    });
});
