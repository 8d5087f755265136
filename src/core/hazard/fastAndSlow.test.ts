import { describe, expect, test } from "vitest";
import {
  elementsOfKind,
  jobOf,
  readDocument,
  settingsOf,
  type Settings,
  type StillhotDocument,
  type System,
  type WorkPoint,
} from "../document";
import { type Question, type Threat, threatsByBruteForce, threatsTo, upsetsOf } from ".";
import { leastMargin } from "./margin";
import { sidesOfThreats } from "./threats";
import { asksFew, draws } from "../../../tests/support/draws";
import { randomDocument } from "../../../tests/support/randomSystems";

/** What makes two lists of threats the same: the sets and conductors, the path's source, and the numbers. */
const signature = (threat: Threat): string =>
  `${threat.strength} ${threat.upsets.map((it) => `${it.kind}:${it.element}${it.phase ?? ""}`).join("+")} ${threat.conductor}`;

function questionOf(document: StillhotDocument): Question {
  const settings: Settings = settingsOf(document);
  const workPoint = Object.values(jobOf(document).workPoints)[0] as WorkPoint;
  return { system: document.system, settings, workPoint };
}

function bothWays(document: StillhotDocument): { fast: Threat[]; byParts: Threat[]; plain: Threat[] } {
  const question = questionOf(document);
  return {
    fast: threatsTo(question).threats,
    byParts: threatsTo(question, { mostSetsOneByOne: 0 }).threats,
    plain: threatsByBruteForce(question),
  };
}

/** The drawing with its first two neutrals broken: what joins them again ties to earth what was not. */
function withBrokenNeutrals(document: StillhotDocument): StillhotDocument {
  const broken = elementsOfKind(document.system, "span")
    .filter(([, it]) => it.neutral)
    .slice(0, 2)
    .map(([id]) => [id, { ...document.system.elements[id]!, parted: "N" }]);
  const elements = { ...document.system.elements, ...Object.fromEntries(broken) } as System["elements"];
  return { ...document, system: { ...document.system, elements } };
}

const asRead = (document: StillhotDocument): StillhotDocument => document;

/** Volts that decide nothing may differ by rounding: one part in ten thousand, or a millivolt. */
const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-3 + 1e-4 * Math.max(Math.abs(a), Math.abs(b));

const FIGURES = ["volts", "exposureVolts", "exposureToEarthVolts", "groundAmps"] as const;

function readable(seed: number, parts: number, nonlinearLoads: boolean): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts, nonlinearLoads })));
  return "document" in read ? read.document : undefined;
}

describe("H5 no threat up to strength 3 is missed: the fast search finds what brute force finds", () => {
  for (const [name, parts, nonlinear, from, to, drawn] of [
    ["small drawings", 7, false, 0, 150, asRead],
    ["larger drawings", 12, false, 1000, 1060, asRead],
    ["loads of every model", 8, true, 2000, 2060, asRead],
    ["broken neutrals", 7, false, 3000, 3040, withBrokenNeutrals],
  ] as const)
    test(name, () => {
      let asked = 0;
      for (let seed = from; seed < from + draws(to - from); seed++) {
        const read = readable(seed, parts, nonlinear);
        if (read === undefined) continue;
        const document = drawn(read);
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

describe("H23 proposed figures of threats lie on the sides of the limits that the threats themselves lie on", () => {
  for (const [name, nonlinear, from, drawn] of [
    ["impedances", false, 4000, asRead],
    ["loads of every model", true, 4100, asRead],
    ["broken neutrals", true, 4200, withBrokenNeutrals],
  ] as const)
    test(name, () => {
      let asked = 0;
      for (let seed = from; seed < from + draws(60); seed++) {
        const read = readable(seed, 8, nonlinear);
        if (read === undefined) continue;
        const question = questionOf(drawn(read));
        const sideOf = (it: Pick<Threat, "conductor" | "strength" | "exposureVolts">) =>
          `${it.strength} ${it.conductor} ${it.exposureVolts >= question.settings.exposureLimitVolts}`;
        for (const mostStrength of [0, 1, 3]) {
          const sides = sidesOfThreats(question, { mostStrength });
          const all = threatsTo(question, { mostStrength });
          expect(sides.threats.map(sideOf).sort(), `seed ${seed}, up to ${mostStrength}`).toEqual(
            all.threats.map(sideOf).sort(),
          );
          expect(leastMargin(sides), `seed ${seed}, up to ${mostStrength}`).toBe(leastMargin(all));
          asked += all.threats.length;
        }
      }
      if (!asksFew) expect(asked).toBeGreaterThan(200);
    });
});
