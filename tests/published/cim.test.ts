import { describe, expect, test } from "vitest";
import { assess, complex, type StillhotDocument } from "../../src/core";
import acepPsil from "../../shared/import/expected/acep-psil.json";
import ieee123 from "../../shared/import/expected/ieee123.json";
import ieee13Assets from "../../shared/import/expected/ieee13-assets.json";
import ieee13Devices from "../../shared/import/expected/ieee13-devices.json";
import lateral from "../../shared/import/expected/ieee8500-lateral.json";
import ieee13ThreeWinding from "../../shared/import/expected/ieee13-three-winding.json";
import maple10 from "../../shared/import/expected/maple10-node-breaker.json";
import handmade from "../../shared/import/cases/expected.json";
import { done, importModel, reasons } from "../support/imported";

type Phasors = Readonly<Record<string, Readonly<Record<string, readonly number[]>>>>;

/** Largest difference of the phasors, or of their magnitudes alone, in per cent of the expected magnitude; nodes go by their names, whatever their case. */
function worstPercent(
  document: StillhotDocument,
  expected: Phasors,
  { angles = true } = {},
): { percent: number; where: string; compared: number } {
  const exact = new Map(Object.entries(document.system.points).map(([id, it]) => [String(it["label"]), id]));
  const folded = new Map([...exact].map(([label, id]) => [label.toLowerCase(), id]));
  const { conductors } = assess(document);
  let worst = { percent: 0, where: "" };
  let compared = 0;
  for (const [node, phases] of Object.entries(expected))
    for (const [phase, [volts = 0, degrees = 0]] of Object.entries(phases)) {
      const point = exact.get(node) ?? folded.get(node.toLowerCase());
      const report = conductors[`${point}/${phase.replace("s", "")}` as never] as
        | { volts: number; angleDeg: number }
        | undefined;
      if (report === undefined) throw new Error(`${node}/${phase} is not in the drawing`);
      const turned = angles ? degrees : report.angleDeg;
      const apart = complex.magnitude(
        complex.subtract(complex.polar(report.volts, report.angleDeg), complex.polar(volts, turned)),
      );
      const percent = volts === 0 ? apart : (100 * apart) / volts;
      compared++;
      if (percent > worst.percent) worst = { percent, where: `${node}/${phase}` };
    }
  return { ...worst, compared };
}

function machinesOff(document: StillhotDocument): StillhotDocument {
  const elements = Object.entries(document.system.elements).map(
    ([id, it]) => [id, it.kind === "generator" ? { ...it, on: false } : it] as const,
  );
  return { ...document, system: { ...document.system, elements: Object.fromEntries(elements) } };
}

/**
 * Published feeders in the open standard's files. Each file's source, licence and digest stand in shared/import/expected
 * and shared/import/LICENCES.md; bounds are those files' own where the neutral is perfect earth.
 */
describe("feeders through CIM against their published solutions", () => {
  test.each([
    ["ieee13-devices.xml", "derOff", ieee13Devices.cases.derOff.volts, 0.02],
    ["ieee13-assets.xml", "asFile", ieee13Assets.cases.asFile.volts, 0.03],
    // Three windings: nothing hangs on the third, and its node 650z has its volts; the star of the second stands on 0.4 Ω of reactance.
    ["ieee13-three-winding.xml", "derOff", ieee13ThreeWinding.cases.derOff.volts, 0.02],
    ["ieee123.xml", "asFile", ieee123.cases.asFile.volts, 0.005],
    ["acep-psil.xml", "derOff", acepPsil.cases.derOff.volts, 0.1],
    ["ieee8500-lateral.xml", "asFile", lateral.cases.asFile.volts, 0.2],
  ] as const)("%s, %s", (file, _case, expected, bound) => {
    const { document } = done(importModel(`cim/${file}`, { neutral: "earth" }));
    const worst = worstPercent(machinesOff(document), expected as unknown as Phasors);
    expect(worst.percent, worst.where).toBeLessThan(bound);
    expect(worst.compared).toBeGreaterThan(20);
  });

  test.each([
    ["acep-psil.xml", acepPsil.cases.asFile.volts, 0.1],
    ["ieee13-devices.xml", ieee13Devices.cases.asFile.volts, 0.02],
    ["ieee13-three-winding.xml", ieee13ThreeWinding.cases.asFile.volts, 0.02],
  ] as const)("%s as it comes in, its machines at their outputs", (file, expected, bound) => {
    const result = done(importModel(`cim/${file}`, { neutral: "earth" }));
    expect(result.assumed.map(({ what }) => what.key)).toContain("importing.machineRunning");
    const worst = worstPercent(result.document, expected as unknown as Phasors);
    expect(worst.percent, worst.where).toBeLessThan(bound);
    expect(worst.compared).toBeGreaterThan(20);
  });

  test("the 123-node feeder's magnitudes, at its own file's tolerance", () => {
    const { document } = done(importModel("cim/ieee123.xml", { neutral: "earth" }));
    const worst = worstPercent(document, ieee123.cases.asFile.volts as unknown as Phasors, { angles: false });
    expect(worst.percent, worst.where).toBeLessThan(0.001);
    expect(worst.compared).toBeGreaterThan(250);
  });

  test("the neutral as a return that can be cut moves them by less than two parts in a thousand", () => {
    const { document } = done(importModel("cim/ieee13-devices.xml"));
    expect(
      worstPercent(machinesOff(document), ieee13Devices.cases.derOff.volts as unknown as Phasors).percent,
    ).toBeLessThan(0.2);
  });

  test("matrices from wires and cables", () => {
    const { document } = done(importModel("cim/ieee13-assets.xml", { neutral: "earth" }));
    for (const [name, line] of Object.entries(ieee13Assets.lineMatrices)) {
      if (name.includes("primitive")) continue;
      const span = Object.values(document.system.elements).find((it) => it["label"] === name)!;
      const order = [...String(span["phases"])].map((it) => line.phases.indexOf(it));
      const z = span["zOhmsPerKm"] as unknown as number[][][];
      order.forEach((row, i) =>
        order.forEach((column, j) => {
          expect(z[i]![j]![0]!, `${name} r`).toBeCloseTo(line.zOhmsPerKm[row]![column]![0]!, 3);
          expect(z[i]![j]![1]!, `${name} x`).toBeCloseTo(line.zOhmsPerKm[row]![column]![1]!, 3);
        }),
      );
    }
  });

  test("two substations and their breakers: every class is read or named", () => {
    const { counts, document, leftOut } = done(importModel("cim/maple10-node-breaker.xml"));
    expect(counts.elements).toMatchObject({
      breaker: maple10.classCounts.Breaker,
      source: 1,
      transformer: 8,
      generator: 12,
    });
    expect(leftOut).toEqual([]);
    expect(Object.keys(document.system.points)).toHaveLength(maple10.classCounts.ConnectivityNode);
  });
});

describe("traps of the standard, a hand-written file each", () => {
  test.each(Object.entries(handmade.good))("%s", (file, { elements, volts }) => {
    const imported = done(importModel(`cases/${file}`, { neutral: "earth" }));
    expect(imported.counts.elements).toMatchObject(elements);
    if (file.startsWith("03"))
      expect(Object.values(imported.document.system.elements)).toContainEqual(
        expect.objectContaining({ label: "LBS 7", kind: "disconnect", phases: "ABC", toPhases: "ACB" }),
      );
    const expected = ("voltsWithNearestTaps" in handmade.good[file as never]
      ? (handmade.good[file as never] as { voltsWithNearestTaps: Phasors }).voltsWithNearestTaps
      : volts) as unknown as Phasors;
    const worst = worstPercent(imported.document, expected);
    expect(worst.percent, worst.where).toBeLessThan(0.05);
  });

  test.each(Object.entries(handmade.broken))("%s is refused in words", (file, expected) => {
    const wanted = "errors" in expected ? expected.errors : [expected.error];
    expect(reasons(importModel(`cases/${file}`)).sort()).toEqual([...wanted].sort());
  });
});
