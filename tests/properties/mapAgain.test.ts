import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  assessWithoutWork,
  exportMap,
  importMap,
  isUnreadable,
  readDocument,
  type StillhotDocument,
} from "../../src/core";
import { done, importModel } from "../support/imported";
import { randomDocument } from "../support/randomSystems";
import { spell } from "../support/words";

const read = (text: string): StillhotDocument | undefined => {
  const found = readDocument(text);
  return isUnreadable(found) ? undefined : found.document;
};

/** A circuit alongside has no place on a map: what is compared is the drawing without it. */
const withoutNearby = (document: StillhotDocument): StillhotDocument => ({
  ...document,
  system: {
    ...document.system,
    elements: Object.fromEntries(
      Object.entries(document.system.elements).filter(([, it]) => it.kind !== "nearby"),
    ),
  },
});

/** Same states, and the same volts but for rounding. */
function expectAlike(before: StillhotDocument, after: StillhotDocument): void {
  const [was, is] = [before, after].map((it) => assessWithoutWork(it).conductors);
  expect(Object.keys(is!).sort()).toEqual(Object.keys(was!).sort());
  for (const [id, report] of Object.entries(was!)) {
    const other = is![id as never] as typeof report;
    expect(`${id} ${other.state}`).toBe(`${id} ${report.state}`);
    expect(Math.abs(other.volts - report.volts), id).toBeLessThan(1e-6 * Math.max(1, report.volts));
  }
}

describe("a drawing written as a map comes back with the same states and volts", () => {
  const demos = readdirSync("shared/demos").filter((it) => it.endsWith(".stillhot.json"));
  test.each(demos)("%s", (name) => {
    const document = withoutNearby(read(readFileSync(`shared/demos/${name}`, "utf8"))!);
    expectAlike(document, done(importMap(exportMap(document).text)).document);
  });

  test("random systems", () => {
    let compared = 0;
    for (let seed = 0; seed < 60; seed++) {
      const drawn = read(JSON.stringify(randomDocument(seed, { parts: 10, nonlinearLoads: seed % 2 === 0 })));
      if (drawn === undefined) continue;
      const document = withoutNearby(drawn);
      expectAlike(document, done(importMap(exportMap(document).text)).document);
      compared++;
    }
    expect(compared).toBeGreaterThan(30);
  });

  test("a published feeder, matrices and taps and all", () => {
    const { document } = done(importModel("cim/ieee13-three-winding.xml"));
    expectAlike(document, done(importMap(exportMap(document).text)).document);
  });
});

test("what a map does not carry is named", () => {
  const document = read(
    JSON.stringify({
      format: "stillhot",
      formatVersion: 1,
      notes: "x",
      system: {
        structures: { s1: { label: "Pole 1" } },
        points: { p1: { on: "s1" }, p2: {}, n1: {} },
        elements: {
          n1: { kind: "source", at: "p1", phases: "A", kvLL: 12.47 },
          l1: { kind: "span", from: "p1", to: "p2", phases: "A", mystery: 1 },
          x1: { kind: "nearby", span: "l1", relation: "crossing", kvLL: 34.5, spacingM: 2 },
        },
      },
      job: { task: "t" },
      settings: { hazardVolts: 40 },
    }),
  )!;
  const { leftOut, approximated } = exportMap(document);
  expect(leftOut.map((it) => spell(it.what))).toEqual([
    "not written: the job, with its work points and steps",
    "not written: limits and rules that differ from the defaults",
    "not written: the drawing's notes",
    "not written: a structure with its name, condition and place",
    "not written: keys that the format does not know",
    "not written: a circuit alongside or across",
  ]);
  expect(approximated.map((it) => spell(it.what))).toEqual([
    "written without places",
    "written under another id",
  ]);
});
