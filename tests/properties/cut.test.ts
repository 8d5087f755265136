import { describe, expect, test } from "vitest";
import {
  assess,
  type Assessment,
  cutAround,
  jobOf,
  pieceAround,
  readDocument,
  type StillhotDocument,
  type Threat,
  writeDocument,
} from "../../src/core";
import { randomDocument } from "../support/randomSystems";
import { draws } from "../support/draws";

function readable(seed: number, parts: number, nonlinearLoads: boolean): StillhotDocument | undefined {
  const read = readDocument(JSON.stringify(randomDocument(seed, { parts, nonlinearLoads })));
  return "document" in read ? saved(read.document) : undefined;
}

/** As it is once it was saved, its records in the order of the file. */
function saved(document: StillhotDocument): StillhotDocument {
  const again = readDocument(writeDocument(document));
  if (!("document" in again)) throw new Error(JSON.stringify(again.problems));
  expect(again.warnings).toEqual([]);
  return again.document;
}

/** One part in a thousand, or a millivolt, which is rounding. */
const isNear = (a: number, b: number) => Math.abs(a - b) <= 1e-3 + 1e-3 * Math.max(Math.abs(a), Math.abs(b));

const told = (threat: Threat): string =>
  `${threat.conductor} ${threat.strength} ${threat.upsets.map((it) => `${it.kind}:${it.element}${it.phase ?? ""}`).join("+")}`;

/** What a crew reads of a work point, to the last number, in the piece as in the whole. */
function expectSame(piece: Assessment, whole: Assessment, name: string): void {
  for (const [id, own] of Object.entries(piece.workPoints)) {
    const there = whole.workPoints[id as never]!;
    expect({ ...own, threats: own.threats.map(told), assumptions: 0 }, name).toEqual({
      ...there,
      threats: there.threats.map(told),
      assumptions: 0,
    });
    own.threats.forEach((threat, nth) => {
      const other = there.threats[nth]!;
      for (const key of [
        "volts",
        "exposureVolts",
        "exposureToEarthVolts",
        "bodyMilliamps",
        "groundAmps",
      ] as const)
        expect(
          isNear(threat[key], other[key]),
          `${name} ${told(threat)} ${key} ${threat[key]} ${other[key]}`,
        ).toBe(true);
    });
  }
  for (const [id, own] of Object.entries(piece.conductors)) {
    const there = whole.conductors[id as never]!;
    expect(own.state, `${name} ${id}`).toBe(there.state);
    for (const key of ["volts", "voltsLoadsOff"] as const)
      expect(isNear(own[key], there[key]), `${name} ${id} ${key} ${own[key]} ${there[key]}`).toBe(true);
  }
}

const hasGrounds = ({ system }: StillhotDocument): boolean =>
  Object.values(system.elements).some(({ kind }) => kind === "ground");

describe("H14 what is cut off and replaced by an equal source changes nothing at the work point", () => {
  test.each([
    ["small drawings", 8, 0, 120],
    ["larger drawings", 14, 3000, 3080],
  ] as const)("%s, loads that are impedances, within any number of openings", (_name, parts, from, to) => {
    let cut = 0;
    for (let seed = from; seed < from + draws(to - from); seed++) {
      const document = readable(seed, parts, false);
      if (document === undefined) continue;
      const at = Object.values(jobOf(document).workPoints)[0]!.at;
      for (const openings of [0, 1, 2]) {
        // What closes far off can add to the current through grounds: there the piece is held against the whole.
        const piece = (hasGrounds(document) ? pieceAround : cutAround)(document, [at], openings);
        if (piece.parts.length === 0) continue;
        cut++;
        expectSame(assess(saved(piece.document)), assess(document), `seed ${seed}, ${openings} openings`);
      }
    }
    expect(cut).toBeGreaterThan(draws(to - from) / 4);
  });

  test("loads of every model: held against the whole, and more is kept where they differ", () => {
    let cut = 0;
    for (let seed = 5000; seed < 5000 + draws(80); seed++) {
      const document = readable(seed, 10, true);
      if (document === undefined) continue;
      const at = Object.values(jobOf(document).workPoints)[0]!.at;
      const piece = pieceAround(document, [at], 1);
      if (piece.parts.length > 0) cut++;
      expectSame(assess(piece.document), assess(document), `seed ${seed}`);
    }
    expect(cut).toBeGreaterThan(draws(15));
  });
});
