/** What the second implementation found, each on the smallest drawing that shows it. */
import { expect, test } from "vitest";
import {
  assess,
  isUnreadable,
  readDocument,
  type Settings,
  settingsOf,
  type StillhotDocument,
  type WorkPoint,
} from "../../src/core";
import { threatsByBruteForce, threatsTo } from "../../src/core/hazard";
import type { ConductorId } from "../../src/core/terms";
import { nameOf } from "./hazard";

function drawing(keys: object): StillhotDocument {
  const read = readDocument(JSON.stringify({ format: "stillhot", formatVersion: 1, ...keys }));
  if (isUnreadable(read)) throw new Error(JSON.stringify(read.problems));
  return read.document;
}

test("a neutral that is joined again ends what came through it, and what it leaves induced is a threat of its own", () => {
  const document = drawing({
    title: "a cut neutral",
    system: {
      points: { p1: {}, p2: {}, p3: {}, p4: {} },
      elements: {
        s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
        le: { kind: "lead", from: "p1", to: "p2", phases: "ABC", cut: "BCN" },
        sp: { kind: "span", from: "p2", to: "p3", phases: "ABC", lengthM: 2400 },
        t1: {
          kind: "transformer",
          from: "p3",
          to: "p4",
          phases: "ABC",
          connection: "Yg-Yg",
          kva: 75,
          primaryKv: 12.47,
          secondaryV: 480,
          excitingPercent: 0,
        },
        g1: { kind: "ground", at: "p3", phases: "ABC", to: "earth", cable: "2/0" },
      },
    },
    job: { workPoints: { w1: { at: "p2", conductors: "BC" } } },
  });
  const settings: Settings = settingsOf(document);
  const workPoint = { at: "p2", conductors: "BC" } as WorkPoint;
  const fast = threatsTo({ system: document.system, settings, workPoint }).threats.map(nameOf);
  expect(fast).toEqual(threatsByBruteForce({ system: document.system, settings, workPoint }).map(nameOf));
  expect(fast).toContain("B by rejoin:le.N");
});

/** The line and one standby generator stay under what the grounding cable withstands; with both generators it parts. */
function twoGenerators(customers: number): StillhotDocument {
  const elements: Record<string, unknown> = {
    s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47, on: true },
    c1: {
      kind: "cutout",
      from: "p1",
      to: "p2",
      phases: "ABC",
      open: "ABC",
    },
    t1: {
      kind: "transformer",
      from: "p2",
      to: "p3",
      phases: "ABC",
      connection: "Yg-Yg",
      kva: 100,
      primaryKv: 12.47,
      secondaryV: 480,
    },
    g1: { kind: "ground", at: "p3", phases: "ABC", to: "neutral", cable: "2" },
  };
  for (const id of ["ga", "gb"])
    elements[id] = { kind: "generator", at: "p3", phases: "ABC", kva: 700, volts: 480 };
  const points: Record<string, unknown> = { p1: {}, p2: {}, p3: {} };
  for (let k = 0; k < customers; k++) {
    points[`h${k}`] = {};
    elements[`t_${k}`] = {
      kind: "transformer",
      from: "p1",
      to: `h${k}`,
      phases: "A",
      connection: "single",
      kva: 10,
      primaryKv: 7.2,
      secondaryV: 240,
    };
    elements[`l_${k}`] = { kind: "load", at: `h${k}`, phases: "12", kw: 2, customers: 1 };
  }
  return drawing({
    title: "two generators",
    system: { points, elements },
    job: {
      workPoints: { w1: { at: "p3", conductors: "A" } },
      steps: [
        { do: "check-detector", done: true },
        { do: "test", at: "p3", phases: "ABC", done: true },
      ],
    },
  });
}

test("what parts a jumper only together is a threat by exposure, however many customers there are", () => {
  for (const customers of [1, 16]) {
    const report = Object.values(assess(twoGenerators(customers)).workPoints)[0]!;
    const names = report.threats.map(nameOf);
    expect(names, `${customers} customers`).toContain("A by close:c1.A+start:ga+start:gb");
    expect(names).not.toContain("A by start:ga+start:gb");
  }
});

test("what floats is held by the leakage of its conductors alone: a capacitor's own inside takes no part in it", () => {
  const document = drawing({
    title: "an unearthed source with a capacitor on one phase",
    system: {
      points: { p1: {} },
      elements: {
        s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47, earthed: false },
        k1: { kind: "capacitor", at: "p1", phases: "A", kvar: 50, kvLL: 12.47 },
      },
    },
  });
  // Each conductor leaks the same, so that their volts to earth have to cancel (Kirchhoff's current law at the earth).
  const conductors = Object.values(assess(document).conductors);
  const sum = (along: (radians: number) => number) =>
    conductors.reduce((total, { volts, angleDeg }) => total + volts * along((angleDeg * Math.PI) / 180), 0);
  expect(conductors).toHaveLength(4);
  expect(Math.hypot(sum(Math.cos), sum(Math.sin))).toBeLessThan(0.01);
});

test("a neutral that a fault holds is faulted by the highest volts of what loads join to it, as it is backfed by them", () => {
  const document = drawing({
    title: "a fault to a neutral that nothing ties to earth",
    system: {
      points: { p1: {}, p2: {} },
      elements: {
        s1: { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 },
        c1: { kind: "cutout", from: "p1", to: "p2", phases: "ABC", neutral: false },
        l1: { kind: "load", at: "p2", phases: "ABC", kw: 80 },
        f1: { kind: "fault", at: "p2", phases: "BC", to: "neutral" },
      },
    },
  });
  // With the fault lifted the load is balanced, and its neutral at rest: one phase of it off, and it is not.
  expect(assess(document).conductors["p2/N" as ConductorId]!.state).toBe("faulted");
});
