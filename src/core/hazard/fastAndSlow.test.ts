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
import { draw } from "../../../tests/support/jobNotation";
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
      if (!asksFew) expect(asked).toBeGreaterThan(draws(to - from) / 3);
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
      if (!asksFew) expect(asked).toBeGreaterThan(draws(200));
    });
});

/** Two loads from a grounded phase to one that is open at each of them: their currents go through the ground set. */
const partedByLoads = (clearingSeconds: number): Question =>
  questionOf(
    draw(`
      s1  source p1    AB kvLL=12.47
      c1  cutout p1-p3 B  open=B
      c2  cutout p1-p4 B  open=B
      x1  span   p2-p3 A
      x2  span   p2-p4 A
      ld1 load   p3    AB connection=delta kw=2000 model=PQ
      ld2 load   p4    AB connection=delta kw=2000 model=PQ
      g1  ground p2    A  to=neutral cable=2
      w1  work   p2    A
      set clearingSeconds=${clearingSeconds}
    `),
  );

describe("a ground set that parts only by what a load's own model draws", () => {
  // By hand: 2000 kW at 12.47 kV are 160 A; at 7.2 kV an impedance takes 92 A, what draws its power whatever the volts 278 A at most.
  test("is on the worker, not under the limit by far", () => {
    const question = partedByLoads(2000);
    const sideOf = (it: Pick<Threat, "strength" | "exposureVolts">) =>
      `${it.strength} ${it.exposureVolts >= question.settings.exposureLimitVolts}`;
    const sides = sidesOfThreats(question).threats.map(sideOf).sort();
    expect(sides).toEqual(threatsByBruteForce(question).map(sideOf).sort());
    expect(sides).toEqual(["1 true", "1 true"]);
  });

  test("is found where it takes two of them", () => {
    const question = partedByLoads(1000);
    const found = threatsTo(question).threats.map(signature);
    expect(found).toEqual(threatsByBruteForce(question).map(signature));
    expect(found).toContain("2 close:c1B+close:c2B A");
  });
});

test("a machine that a fault holds down is told by what loads make of its volts, not by impedances in their place", () => {
  // Constant power capacitive loads under their rated volts lift more than the impedances that draw as much at rated volts.
  const document = (hazardVolts: number) =>
    draw(`
      g1 generator h   12 kva=20 volts=230
      m1 main      h-x 12
      l1 load      x   12 kw=0.1 kvar=-3 model=PQ ratedKv=0.3
      f1 fault     x   1
      h  point     kind=service
      set hazardVolts=${hazardVolts}
      w1 work      x   1
    `);
  const hazards = Array.from({ length: 41 }, (_, nth) => 115 + nth / 8);
  const off = hazards.filter((hazardVolts) => {
    const { fast, byParts, plain } = bothWays(document(hazardVolts));
    const wanted = plain.map(signature).join();
    return fast.map(signature).join() !== wanted || byParts.map(signature).join() !== wanted;
  });
  expect(off).toEqual([]);
});
