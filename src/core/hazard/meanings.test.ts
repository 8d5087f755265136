import { describe, expect, test } from "vitest";
import { assessed, type Drawn, saidAt } from "../../../tests/support/drawn";

const MACHINE = { kind: "generator", kva: 100, volts: 480, on: true };
const SOURCE = { kind: "source", at: "p1", phases: "ABC", kvLL: 12.47 };
const OHMS = { kind: "span", lengthM: 1000, phases: "A" };

describe("S12 sources that nothing keeps in step have no common angle", () => {
  test.each([
    ["A", "A", 0],
    ["B", "B", -120],
    ["C", "C", 120],
    ["1", "1", 0],
    ["2", "2", 180],
    ["12", "2", 180],
    ["ABC", "B", -120],
    ["AB", "A", 30],
    ["BC", "B", -90],
    ["AC", "A", -30],
  ])("a machine on %s has letter %s at %d degrees", (phases, letter, degrees) => {
    const split = phases.includes("1") || phases.includes("2");
    const across = phases.length === 2 && !split;
    const elements: Drawn["elements"] = {
      g1: { ...MACHINE, at: "p1", phases },
      l1: { kind: "lead", from: "p1", to: "p2", phases, neutral: !across },
    };
    const { angleDeg, volts } = assessed({ points: { p1: { earthOhms: 5 } }, elements }).conductors[
      `p1/${letter}`
    ]!;
    expect(((angleDeg - degrees + 540) % 360) - 180).toBeCloseTo(0, 3);
    expect(volts).toBeCloseTo(across ? 240 : split ? 240 : 480 / Math.sqrt(3), 1);
  });

  test("one winding between two letters brings no neutral and reaches none", () => {
    const elements = {
      g1: { ...MACHINE, at: "p1", phases: "AB" },
      l1: { kind: "lead", from: "p1", to: "p2", phases: "AB" },
    };
    const { conductors } = assessed({ elements });
    expect(conductors["p1/N"]!.sources).toEqual([]);
    const alone = assessed({
      elements: { ...elements, l1: { ...elements.l1, neutral: false } },
    });
    expect(Object.keys(alone.conductors)).not.toContain("p1/N");
  });

  const twoMachines = (second: object): Drawn => ({
    points: { p1: { earthOhms: 5 } },
    elements: {
      g1: { ...MACHINE, at: "p1", phases: "B" },
      g2: { ...MACHINE, at: "p2", phases: "C" },
      b1: { kind: "lead", from: "p1", to: "p2", phases: "ABC" },
      ld: { kind: "load", at: "p2", phases: "BC", kw: 20, connection: "delta" },
      ...second,
    },
    job: { workPoints: { w1: { at: "p2", conductors: "A" } } },
  });

  test("two machines that push one conductor through loads add up, though they cancel as drawn", () => {
    const star = {
      l1: { kind: "load", at: "p2", phases: "AB", kw: 1, connection: "delta", ratedKv: 0.48 },
      l2: { kind: "load", at: "p2", phases: "AC", kw: 1, connection: "delta", ratedKv: 0.48 },
    };
    const { conductors, workPoints } = assessed(twoMachines(star));
    const a = conductors["p2/A"]!;
    // Half of each machine's 277 V: at −120° and +120° half of 277 V together, and all of it where they happen to agree.
    expect(a.volts).toBeCloseTo(277.1 / 2, 0);
    expect(a.voltsWorst).toBeCloseTo(277.1, 0);
    expect(a.state).toBe("backfed");
    expect(workPoints["w1"]!.threats[0]!.exposureVolts).toBeCloseTo(277.1, 0);
  });
});

describe("H10 ground sets part above what their cable withstands, and the worker then has none", () => {
  const grounded = (cable: object, job = {}): Drawn => ({
    elements: {
      s1: { ...SOURCE, z1Ohms: [0.05, 0.3], z0Ohms: [0.05, 0.3] },
      c1: { kind: "disconnect", from: "p1", to: "p2", phases: "A", open: "A" },
      l1: { ...OHMS, from: "p2", to: "p3", lengthM: 50 },
      g1: { kind: "ground", at: "p3", phases: "A", ...cable },
    },
    job: { workPoints: { w1: { at: "p3", conductors: "A" } }, ...job },
  });
  test.each([
    ["4/0", { cable: "4/0" }, false],
    ["250 kcmil", { cable: "250 kcmil" }, false],
    ["No. 6", { cable: "6" }, true],
    ["not noted, taken for No. 2", {}, true],
  ])("%s", (_name, cable, parts) => {
    const [threat] = assessed(grounded(cable)).workPoints["w1"]!.threats;
    expect(threat!.groundAmps).toBeGreaterThan(14_500);
    if (parts) expect(threat!.exposureVolts).toBeCloseTo(threat!.volts, -1);
    else expect(threat!.exposureVolts).toBeLessThan(60);
  });

  test("a cable that nobody noted is one assumption more", () => {
    const assumptions = (cable: object) => assessed(grounded(cable)).workPoints["w1"]!.assumptions;
    expect(assumptions({})).toBe(assumptions({ cable: "2" }) + 1);
  });
});

describe("H11 the current through a body is that of a body in circuit", () => {
  const induced = (nearby: object): Drawn => ({
    elements: {
      s1: SOURCE,
      c1: { kind: "disconnect", from: "p1", to: "p2", phases: "A", open: "A" },
      l1: { ...OHMS, from: "p2", to: "p3" },
      n1: {
        kind: "nearby",
        span: "l1",
        relation: "parallel",
        kvLL: 115,
        spacingM: 5,
        lengthM: 20,
        ...nearby,
      },
    },
    job: { workPoints: { w1: { at: "p3", conductors: "A" } } },
  });
  test("thousands of volts behind little capacitance push less than 6 mA, and no more is said of them", () => {
    const short = assessed(induced({ lengthM: 60 }));
    const [threat] = short.workPoints["w1"]!.threats;
    expect(short.workPoints["w1"]!.verdict).toBe("live");
    expect(threat!.exposureVolts).toBeGreaterThan(50);
    expect(threat!.bodyMilliamps).toBeLessThan(threat!.exposureVolts / 20);
    expect(saidAt(short, "w1")).not.toContain("induced-exposure danger");
    const long = assessed(induced({ lengthM: 1000 }));
    expect(long.workPoints["w1"]!.threats[0]!.bodyMilliamps).toBeGreaterThan(6);
    expect(saidAt(long, "w1")).toContain("induced-exposure danger");
  });

  test("what a source holds pushes its volts over the body's ohms", () => {
    const it = assessed({ ...induced({ on: false }), settings: { bodyOhms: 500 } });
    const [threat] = it.workPoints["w1"]!.threats;
    expect(threat!.bodyMilliamps / ((1000 * threat!.exposureVolts) / 500)).toBeCloseTo(1, 2);
  });
});

describe("H12 what a worker is bonded to", () => {
  const threeWire = (elements: object, points: object = {}): Drawn => ({
    points: { ...(points as Record<string, object>) },
    elements: {
      s1: { ...SOURCE, z1Ohms: [0.5, 3], z0Ohms: [0.5, 3] },
      c1: { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", neutral: false, open: "ABC" },
      c2: { kind: "cutout", from: "p2", to: "p3", phases: "ABC", neutral: false },
      ...elements,
    },
    job: { workPoints: { w1: { at: "p2", conductors: "A" } } },
  });
  const SET = { kind: "ground", phases: "ABC", to: "earth", cable: "4/0" };
  const exposures = (it: Drawn) =>
    assessed(it).workPoints["w1"]!.threats.map((threat) => Math.round(threat.exposureVolts));
  test("the bar of a set at the point", () =>
    expect(Math.max(...exposures(threeWire({ g1: { ...SET, at: "p2" } })))).toBeLessThan(2));
  test("the bar of a set on the same pole", () =>
    expect(Math.max(...exposures(threeWire({ g1: { ...SET, at: "p3" } })))).toBeLessThan(2));
  test("earth where the set is not bonded to the pole", () =>
    expect(Math.max(...exposures(threeWire({ g1: { ...SET, at: "p2", poleBond: false } })))).toBeGreaterThan(
      5000,
    ));
  test("earth where the set is on another pole", () => {
    const far = { l1: { kind: "span", from: "p3", to: "p4", phases: "ABC", neutral: false } };
    expect(Math.max(...exposures(threeWire({ ...far, g1: { ...SET, at: "p4" } })))).toBeGreaterThan(5000);
  });
});

describe("S13 rods along a neutral", () => {
  test("tie it to earth at both ends, half of them at each", () => {
    const tied = assessed({
      elements: { l1: { kind: "span", from: "p1", to: "p2", phases: "A", lengthM: 4000, rodsPerKm: 2.5 } },
    });
    expect(tied.conductors["p1/N"]!.state).toBe("neutral");
    expect(tied.conductors["p2/N"]!.state).toBe("neutral");
    const amps = assessed({
      elements: {
        s1: { ...SOURCE, earthed: false },
        l1: { kind: "span", from: "p1", to: "p2", phases: "A", lengthM: 4000, rodsPerKm: 2.5, rodOhms: 50 },
        f1: { kind: "fault", at: "p1", phases: "A", to: "earth", ohms: 1000 },
      },
    }).elements["f1"]!.amps["A"]!;
    // Ten rods of 50 Ω are 5 Ω, and the fault's kiloohm is all else that there is.
    expect(amps).toBeCloseTo(7199.6 / 1005, 1);
  });

  test("a hot neutral of a line without any is a warning, of one with some a danger", () => {
    const hot = (keys: object): Drawn => ({
      elements: {
        s1: { ...SOURCE, at: "p1" },
        l1: { kind: "span", from: "p1", to: "p2", phases: "A", lengthM: 4000, ...keys },
        f1: { kind: "fault", at: "p2", phases: "A", ohms: 5 },
      },
      job: { workPoints: { w1: { at: "p2", conductors: "A" } } },
    });
    expect(saidAt(assessed(hot({})), "p2/N")).toEqual(["neutral-volts warning"]);
    expect(saidAt(assessed(hot({ rodsPerKm: 0.25, rodOhms: 1000 })), "p2/N")).toEqual([
      "neutral-volts danger",
    ]);
  });
});

describe("H13 a weak backfeed hides no switch that puts the line itself on", () => {
  test("both are told", () => {
    const { threats } = assessed({
      elements: {
        s1: SOURCE,
        c1: { kind: "disconnect", from: "p1", to: "p2", phases: "ABC", open: "A" },
        ld: { kind: "load", at: "p2", phases: "AB", kw: 50, connection: "delta" },
      },
      job: { workPoints: { w1: { at: "p2", conductors: "A" } } },
    }).workPoints["w1"]!;
    expect(threats.map(({ upsets }) => upsets.map(({ element }) => element).join())).toEqual(["", "c1"]);
  });
});

describe("what a load's power is rated at", () => {
  test("is nominal volts unless it says so", () => {
    const amps = (keys: object) =>
      assessed({
        elements: { s1: SOURCE, ld: { kind: "load", at: "p1", phases: "A", kw: 100, ...keys } },
      }).elements["ld"]!.amps["A"]!;
    expect(amps({ ratedKv: 12.47 })).toBeCloseTo(amps({}), 9);
    expect(amps({ ratedKv: 24.94 })).toBeCloseTo(amps({}) / 4, 1);
  });
});
